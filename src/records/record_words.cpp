#include "records/record_words.h"

#include <optional>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/units.h"
#include "figures/figures.h"
#include "plan/plan_values.h"
#include "records/beside_plan.h"

namespace laywright {
namespace {

std::string value_text(ReadQuantity quantity, double value) {
  if (!is_in_mm(quantity)) return figure(value, 1);
  return quantity == ReadQuantity::length ? amount_text(Amount::fiber_length, value / mm_per_m, 2, false)
                                          : size_text(value, false);
}

std::string off_text(ReadQuantity quantity, double off) {
  return fmt::format("{}{}", off < 0.0 ? "" : "+", value_text(quantity, off));
}

std::string what_it_adds(const RecordEntry& entry) {
  std::string text;
  const auto add = [&](const std::string& part) {
    if (!text.empty()) text += ", ";
    text += part;
  };
  if (entry.decision != Decision::none) add(name_of(entry.decision));
  if (!entry.readings.empty()) add(counted(entry.readings.size(), "line") + " of readings");
  if (!entry.fitted.empty()) add("a fit");
  if (!entry.pictures.empty()) add(fmt::format("pictures: {}", entry.pictures.size()));
  return text.empty() ? "a note" : text;
}

// A setting that was fitted: "0.262 mm".
std::string fitted_text(const PlanDraft* plan, const std::string& key, double value) {
  const FieldInfo* field = plan != nullptr ? field_at(*plan, key) : nullptr;
  const bool in_mm = field != nullptr && field->kind == FieldKind::quantity && field->dimension == Dimension::length;
  return figure(value, in_mm ? 4 : 3) + (in_mm ? " mm" : "");
}

}  // namespace

std::string difference_text(const SpoolRecord& record) {
  const std::optional<double> off = outermost_difference(record, ReadQuantity::diameter_middle);
  return off ? signed_figure(*off, 2) + " mm" : "-";
}

std::string plan_words(const SpoolRecord& record) { return record.title.empty() ? record.plan_file : record.title; }

std::string record_heading(const SpoolRecord& record) {
  return fmt::format("Record {}: spool {}, {}, {}", record.number, visible(record.spool), record.date,
                     state_of(record));
}

std::string kept_words(const SpoolRecord& record, const std::string& place) {
  return fmt::format("Record {} of spool {} is kept in {}.", record.number, visible(record.spool), visible(place));
}

std::string added_words(long long number, const std::string& place) {
  return fmt::format("Added to record {} in {}.", number, visible(place));
}

std::vector<RecordLine> head_lines(const SpoolRecord& record) {
  const PlannedLayer& end = record.planned.back();
  std::vector<RecordLine> lines{
      {"machine", visible(record.machine)},
      {"order", visible(record.order)},
      {"plan", fmt::format("{}, revision {}", visible(plan_words(record)), record.revision)},
      {"as planned",
       fmt::format("{}, {} in {}, greatest diameter {} mm; between the flanges {} mm",
                   counted(figure(end.turns, 1), "turn"), length_text(end.length_mm), counted(end.layer, "layer"),
                   figure(record.greatest_diameter_mm, 3), setting(record.inside_width_mm))},
      {"laid by", fmt::format("laywright {}, fidelity {}, seed {}; an estimate", visible(record.program),
                              setting(record.fidelity), visible(record.seed))}};
  std::erase_if(lines, [](const RecordLine& line) { return line.value.empty(); });
  return lines;
}

std::vector<ReadingLine> reading_lines(const SpoolRecord& record) {
  std::vector<ReadingLine> lines;
  for (const BesidePlan& each : readings_beside_plan(record)) {
    lines.push_back(
        {fmt::format("{}, {}", each.place, words_for(each.quantity)), value_text(each.quantity, each.measured),
         each.planned ? value_text(each.quantity, *each.planned) : "-",
         each.planned ? off_text(each.quantity, each.measured - *each.planned) : "-", each.planned.has_value()});
  }
  return lines;
}

std::vector<HistoryEntry> history_of(const SpoolRecord& record, const PlanDraft* plan) {
  std::vector<HistoryEntry> history;
  for (const RecordEntry& entry : record.entries) {
    HistoryEntry told;
    told.when = entry.written;
    told.what = what_it_adds(entry) + (entry.by.empty() ? "" : fmt::format(", by {}", visible(entry.by)));
    for (const std::string* said : {&entry.reason, &entry.note}) {
      if (!said->empty()) told.said.push_back(visible(*said));
    }
    for (const FittedSetting& each : entry.fitted) {
      if (each.told_by_readings)
        told.lines.push_back(fmt::format("{} = {}, planned {}", visible(each.key),
                                         fitted_text(plan, each.key, each.value),
                                         fitted_text(plan, each.key, each.planned)));
    }
    for (const RecordPicture& each : entry.pictures) {
      told.lines.push_back(fmt::format("{} picture, {} kB{}", each.kind,
                                       figure(static_cast<double>(each.size) / 1e3, 0),
                                       each.caption.empty() ? "" : fmt::format(": {}", visible(each.caption))));
    }
    history.push_back(std::move(told));
  }
  return history;
}

}  // namespace laywright
