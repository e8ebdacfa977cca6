#include "records/record_text.h"

#include <algorithm>
#include <array>
#include <optional>

#include <fmt/format.h>

#include "base/readable.h"
#include "figures/figures.h"
#include "plan/plan_file.h"
#include "plan/plan_values.h"
#include "records/beside_plan.h"

namespace laywright {
namespace {

constexpr std::size_t columns = 96;
constexpr double mm_per_m = 1000.0;

std::string or_dash(const std::string& text, std::size_t most) { return text.empty() ? "-" : readable(text, most); }

std::string without_blanks_behind(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line + '\n';
}

std::string difference_text(const SpoolRecord& record) {
  const std::optional<double> off = outermost_difference(record, ReadQuantity::diameter_middle);
  return off ? fmt::format("{:+.2f} mm", *off) : "-";
}

std::string value_text(ReadQuantity quantity, double value) {
  if (!is_in_mm(quantity)) return figure(value, 1);
  return quantity == ReadQuantity::length ? figure(value / mm_per_m, 2) + " m" : figure(value, 3) + " mm";
}

std::string off_text(ReadQuantity quantity, double off) {
  if (!is_in_mm(quantity)) return fmt::format("{:+.1f}", off);
  return quantity == ReadQuantity::length ? fmt::format("{:+.2f} m", off / mm_per_m)
                                          : fmt::format("{:+.3f} mm", off);
}

std::string head(const SpoolRecord& record) {
  const auto line = [](const char* what, const std::string& value) {
    return value.empty() ? "" : fmt::format("  {:<15} {}\n", what, value);
  };
  std::string text = fmt::format("Record {}: spool {}, {}, {}\n", record.number, visible(record.spool), record.date,
                                 state_of(record));
  if (const RecordEntry* decided = entry_of_decision(record); decided != nullptr && !decided->reason.empty())
    text += wrapped(visible(decided->reason), columns, 2);
  text += line("machine", visible(record.machine)) + line("order", visible(record.order));
  text += line("plan", fmt::format("{}, revision {}",
                                   record.title.empty() ? visible(record.plan_file) : visible(record.title),
                                   record.revision));
  const PlannedLayer& end = record.planned.back();
  text +=
      line("as planned", fmt::format("{} turns, {} in {} layers, greatest diameter {} mm; between the flanges {} mm",
                                     figure(end.turns, 1), length_text(end.length_mm), end.layer,
                                     figure(record.greatest_diameter_mm, 3), setting(record.inside_width_mm)));
  return text +
         line("laid by", fmt::format("laywright {}, fidelity {}, seed {}; an estimate", visible(record.program),
                                     setting(record.fidelity), visible(record.seed)));
}

std::string planned_table(const SpoolRecord& record) {
  // The first, each tenth, and the last: all of them are in the document.
  constexpr std::size_t most_lines = 20;
  const std::size_t step = std::max<std::size_t>(1, (record.planned.size() + most_lines - 1) / most_lines);
  std::string text =
      fmt::format("\nAs planned, once the layer lies\n  {:>6} {:>10} {:>12} {:>12} {:>10} {:>10} {:>10} {:>10}\n",
                  "layer", "its turns", "turns", "length, m", "width, mm", "left, mm", "middle", "right");
  for (std::size_t i = 0; i < record.planned.size(); ++i) {
    const PlannedLayer& each = record.planned[i];
    if (i % step != 0 && i + 1 != record.planned.size()) continue;
    text += fmt::format("  {:>6} {:>10} {:>12} {:>12} {:>10} {:>10} {:>10} {:>10}\n", each.layer,
                        figure(each.layer_turns, 1), figure(each.turns, 1), figure(each.length_mm / mm_per_m, 2),
                        figure(each.width_mm, 2), figure(each.outer_diameter_mm[0], 3),
                        figure(each.outer_diameter_mm[1], 3), figure(each.outer_diameter_mm[2], 3));
  }
  if (step > 1) text += fmt::format("  One layer in {} is shown; --json has all.\n", step);
  return text;
}

std::string readings_table(const SpoolRecord& record) {
  const std::vector<BesidePlan> all = readings_beside_plan(record);
  if (all.empty()) return "\nNothing was measured on it yet; `laywright record amend` adds readings.\n";
  std::string text =
      fmt::format("\nMeasured\n  {:<38} {:>14} {:>14} {:>14}\n", "", "measured", "planned", "difference");
  bool between = false;
  for (const BesidePlan& each : all) {
    between = between || !each.planned;
    text += fmt::format(
        "  {:<38} {:>14} {:>14} {:>14}\n", fmt::format("{}, {}", each.place, words_for(each.quantity)),
        value_text(each.quantity, each.measured), each.planned ? value_text(each.quantity, *each.planned) : "-",
        each.planned ? off_text(each.quantity, each.measured - *each.planned) : "-");
  }
  if (between) text += "  - : not the end of a layer of the plan; `laywright record fit` compares these, too.\n";
  return text;
}

std::string what_it_adds(const RecordEntry& entry) {
  std::string text;
  const auto add = [&](const std::string& part) {
    if (!text.empty()) text += ", ";
    text += part;
  };
  if (entry.decision != Decision::none) add(name_of(entry.decision));
  if (!entry.readings.empty()) add(fmt::format("{} lines of readings", entry.readings.size()));
  if (!entry.fitted.empty()) add("a fit");
  if (!entry.pictures.empty()) add(fmt::format("pictures: {}", entry.pictures.size()));
  return text.empty() ? "a note" : text;
}

std::string history(const SpoolRecord& record) {
  std::string text = "\nHistory\n";
  for (const RecordEntry& entry : record.entries) {
    text += fmt::format("  {}  {}{}\n", entry.written, what_it_adds(entry),
                        entry.by.empty() ? "" : fmt::format(", by {}", visible(entry.by)));
    for (const std::string* said : {&entry.reason, &entry.note}) {
      if (!said->empty()) text += wrapped(visible(*said), columns, 6);
    }
    for (const FittedSetting& each : entry.fitted) {
      if (each.told_by_readings)
        text += fmt::format("      {} = {}, planned {}\n", visible(each.key), fitted_text(record, each, each.value),
                            fitted_text(record, each, each.planned));
    }
    for (const RecordPicture& each : entry.pictures) {
      text += fmt::format("      {} picture, {} kB{}\n", each.kind, figure(static_cast<double>(each.size) / 1e3, 0),
                          each.caption.empty() ? "" : fmt::format(": {}", visible(each.caption)));
    }
  }
  return text;
}

}  // namespace

std::string records_text(const std::vector<SpoolRecord>& records) {
  const auto row = [](const auto&... cells) {
    return without_blanks_behind(
        fmt::format("  {:>6}  {:<10}  {:<14}  {:<14}  {:<10}  {:<9}  {:<9}  {:>10}  {}", cells...));
  };
  std::string text = row("record", "date", "spool", "machine", "order", "state", "revision", "off", "plan");
  for (const SpoolRecord& record : records) {
    text += row(record.number, record.date, or_dash(record.spool, 14), or_dash(record.machine, 14),
                or_dash(record.order, 10), state_of(record), record.revision, difference_text(record),
                readable(record.title.empty() ? record.plan_file : record.title, 40));
  }
  return text + fmt::format(
                    "\n{} record{}. Off: the outer diameter in the middle, measured less planned, at the outermost "
                    "reading.\n",
                    records.size(), records.size() == 1 ? "" : "s");
}

std::string fitted_text(const SpoolRecord& record, const FittedSetting& setting_found, double value) {
  const Result<PlanDraft> draft = read_plan(record.plan_text, record.plan_file);
  const FieldInfo* field = draft.ok() ? field_at(draft.value(), setting_found.key) : nullptr;
  const bool in_mm = field != nullptr && field->kind == FieldKind::quantity && field->dimension == Dimension::length;
  return figure(value, in_mm ? 4 : 3) + (in_mm ? " mm" : "");
}

std::string record_text(const SpoolRecord& record) {
  return head(record) + readings_table(record) + planned_table(record) + history(record);
}

}  // namespace laywright
