#include "records/record_text.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/units.h"
#include "figures/figures.h"
#include "plan/plan_file.h"
#include "records/record_words.h"

namespace laywright {
namespace {

std::string or_dash(const std::string& text, std::size_t most) { return text.empty() ? "-" : readable(text, most); }

std::string without_blanks_behind(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line + '\n';
}

std::string head(const SpoolRecord& record) {
  std::string text = record_heading(record) + '\n';
  if (const RecordEntry* decided = entry_of_decision(record); decided != nullptr && !decided->reason.empty())
    text += paragraph(visible(decided->reason), 2);
  for (const RecordLine& each : head_lines(record)) text += fmt::format("  {:<15} {}\n", each.name, each.value);
  return text;
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
  const std::vector<ReadingLine> all = reading_lines(record);
  if (all.empty()) return "\nNothing was measured on it yet; `laywright record amend` adds readings.\n";
  std::string text =
      fmt::format("\nMeasured\n  {:<38} {:>14} {:>14} {:>14}\n", "", "measured", "planned", "difference");
  bool between = false;
  for (const ReadingLine& each : all) {
    between = between || !each.beside_plan;
    text += fmt::format("  {:<38} {:>14} {:>14} {:>14}\n", each.what, each.measured, each.planned, each.difference);
  }
  if (between) text += "  - : not the end of a layer of the plan; `laywright record fit` compares these, too.\n";
  return text;
}

std::string history(const SpoolRecord& record) {
  std::string text = "\nHistory\n";
  const Result<PlanDraft> plan = read_plan(record.plan_text, record.plan_file);
  for (const HistoryEntry& entry : history_of(record, plan.ok() ? &plan.value() : nullptr)) {
    text += fmt::format("  {}  {}\n", entry.when, entry.what);
    for (const std::string& said : entry.said) text += paragraph(said, 6);
    for (const std::string& line : entry.lines) text += fmt::format("      {}\n", line);
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
                readable(plan_words(record), 40));
  }
  return text + fmt::format("\n{}. {}\n", counted(records.size(), "record"), difference_is);
}

std::string record_text(const SpoolRecord& record) {
  return head(record) + readings_table(record) + planned_table(record) + history(record);
}

}  // namespace laywright
