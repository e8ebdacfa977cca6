#include <optional>

#include <nlohmann/json.hpp>

#include "base/units.h"
#include "figures/document_text.h"
#include "records/beside_plan.h"
#include "records/record_text.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json or_null(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }
Json or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

Json head_json(const SpoolRecord& record) {
  const RecordEntry* decided = entry_of_decision(record);
  return {{"number", record.number},
          {"identity", record.identity},
          {"spool", record.spool},
          {"date", record.date},
          {"machine", or_null(record.machine)},
          {"order", or_null(record.order)},
          {"state", state_of(record)},
          {"reason", decided == nullptr ? Json(nullptr) : or_null(decided->reason)},
          {"plan", {{"title", record.title}, {"file", record.plan_file}, {"revision", record.revision}}}};
}

Json planned_json(const PlannedLayer& each) {
  return {{"layer", each.layer},
          {"at_end", each.at_end},
          {"layer_turns", each.layer_turns},
          {"turns", each.turns},
          {"length_m", each.length_mm / mm_per_m},
          {"width", each.width_mm},
          {"outer_diameter",
           {{"left", each.outer_diameter_mm[0]},
            {"middle", each.outer_diameter_mm[1]},
            {"right", each.outer_diameter_mm[2]}}}};
}

Json readings_json(const SpoolRecord& record) {
  Json all = Json::array();
  for (const BesidePlan& each : readings_beside_plan(record)) {
    all.push_back({{"place", each.place},
                   {"quantity", name_of(each.quantity)},
                   {"measured", each.measured},
                   {"planned", or_null(each.planned)},
                   {"difference", each.planned ? Json(each.measured - *each.planned) : Json(nullptr)},
                   {"unit", is_in_mm(each.quantity) ? "mm" : "turns"}});
  }
  return all;
}

Json entry_json(const RecordEntry& entry) {
  Json fitted = Json::array(), pictures = Json::array();
  for (const FittedSetting& each : entry.fitted) {
    fitted.push_back({{"key", each.key},
                      {"planned", each.planned},
                      {"value", each.value},
                      {"sigma", each.sigma},
                      {"told_by_readings", each.told_by_readings}});
  }
  for (const RecordPicture& each : entry.pictures) {
    pictures.push_back(
        {{"kind", each.kind}, {"caption", or_null(each.caption)}, {"bytes", each.size}, {"hash", each.hash}});
  }
  return {{"written", entry.written},
          {"by", or_null(entry.by)},
          {"program", entry.program},
          {"decision", entry.decision == Decision::none ? Json(nullptr) : Json(name_of(entry.decision))},
          {"reason", or_null(entry.reason)},
          {"note", or_null(entry.note)},
          {"readings", entry.readings.size()},
          {"fitted", std::move(fitted)},
          {"pictures", std::move(pictures)}};
}

}  // namespace

std::string records_json(const std::vector<SpoolRecord>& records) {
  Json all = Json::array();
  for (const SpoolRecord& record : records) {
    Json each = head_json(record);
    Json& off = each["difference"] = Json::object();
    for (std::size_t i = 0; i < read_quantities; ++i) {
      const auto quantity = static_cast<ReadQuantity>(i);
      off[name_of(quantity)] = or_null(outermost_difference(record, quantity));
    }
    all.push_back(std::move(each));
  }
  return document_text({{"format", "lay-record-list 1"}, {"records", std::move(all)}});
}

std::string record_json(const SpoolRecord& record) {
  Json document{{"format", "lay-record 1"}};
  document.update(head_json(record));
  document["plan"]["text"] = record.plan_text;
  document["laid"] = {{"program", record.program}, {"fidelity", record.fidelity}, {"seed", record.seed}};
  document["greatest_diameter"] = record.greatest_diameter_mm;
  document["inside_width"] = record.inside_width_mm;
  document["readings"] = readings_json(record);
  Json& planned = document["planned"] = Json::array();
  for (const PlannedLayer& each : record.planned) planned.push_back(planned_json(each));
  Json& entries = document["history"] = Json::array();
  for (const RecordEntry& entry : record.entries) entries.push_back(entry_json(entry));
  return document_text(document);
}

}  // namespace laywright
