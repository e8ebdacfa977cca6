#include "app/desktop_records.h"

#include "jobs/trouble.h"
#include "records/record_words.h"
#include "records/trend_words.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

Json list_of(const RecordsSeen& seen) {
  Json list = Json::array();
  for (const SpoolRecord& record : seen.records) {
    list.push_back({{"number", record.number},
                    {"spool", record.spool},
                    {"machine", record.machine},
                    {"order", record.order},
                    {"state", state_of(record)},
                    {"off", difference_text(record)},
                    {"plan", plan_words(record)}});
  }
  return list;
}

Json page_of(const RecordsSeen& seen) {
  const SpoolRecord& record = *seen.page;
  Json history = Json::array(), readings = Json::array();
  for (const HistoryEntry& entry : history_of(record, seen.plan ? &seen.plan->draft() : nullptr))
    history.push_back(entry.what);
  for (const ReadingLine& line : reading_lines(record))
    readings.push_back({line.what, line.measured, line.planned, line.difference});
  return {{"heading", record_heading(record)}, {"history", std::move(history)}, {"readings", std::move(readings)}};
}

Json trends_of(const RecordsSeen& seen, const std::string& chart) {
  Json all = Json::array();
  for (const Trend& trend : seen.trends.all)
    all.push_back(
        {{"heading", trend_heading(trend)}, {"points", trend.spools.size()}, {"said", control_lines(trend)}});
  return {{"chart", chart}, {"all", std::move(all)}};
}

Json fit_of(const Workbench& bench) {
  const RecordsDesk& records = bench.records();
  Json carry = Json::array();
  for (const CarriedSetting& each : would_carry(bench)) carry.push_back({each.path, each.before, each.after});
  return {{"busy", records.fitting().busy},
          {"share", records.fitting().share},
          {"stopped", records.fitting().stopped},
          {"trouble", records.fitting().trouble},
          {"number", records.found() ? Json(records.found()->number) : Json(nullptr)},
          {"text", records.found() ? Json(records.found()->fit.text) : Json(nullptr)},
          {"would_carry", std::move(carry)},
          {"carried", is_carried(bench)}};
}

}  // namespace

nlohmann::ordered_json records_json(const Workbench& bench, const PanelState& panels) {
  const RecordsDesk& records = bench.records();
  if (!records.seen()) return nullptr;
  const RecordsSeen& seen = *records.seen();
  return {{"place", seen.place_words},
          {"trouble", trouble_words(seen.trouble)},
          {"reading", records.reading()},
          {"list", list_of(seen)},
          {"page", seen.page ? page_of(seen) : Json(nullptr)},
          {"keeping", records.keeping()},
          {"kept", records.kept() ? Json(records.kept()->words) : Json(nullptr)},
          {"not_kept", records.kept() ? Json(trouble_words(records.kept()->trouble)) : Json(nullptr)},
          {"trends", trends_of(seen, panels.records.trend)},
          {"fit", fit_of(bench)}};
}

}  // namespace laywright
