#include "session/typed_readings.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/units.h"
#include "figures/csv_field.h"

namespace laywright {
namespace {

std::string cell_of(const std::optional<double>& value) { return value ? fmt::format("{:.10g}", *value) : ""; }

std::string length_cell(const std::optional<double>& mm, bool inch) {
  return mm ? cell_of(value_in(Amount::fiber_length, *mm / mm_per_m, inch)) : "";
}

std::string size_cell(const std::optional<double>& mm, bool inch) {
  return mm ? cell_of(value_in(Amount::small_length, *mm, inch)) : "";
}

std::array<std::string, reading_cells> cells_of(const Reading& r, bool inch) {
  return {cell_of(r.counter_turns),
          r.counter_reading ? cell_of(r.counter_reading) : length_cell(r.counter_length_mm, inch),
          size_cell(r.diameter_mm[0], inch),
          size_cell(r.diameter_mm[1], inch),
          size_cell(r.diameter_mm[2], inch),
          size_cell(r.width_mm, inch)};
}

bool all_empty(const TypedReadings& typed) {
  return std::all_of(typed.begin(), typed.end(), [](const TypedRow& row) { return row.empty(); });
}

Result<AsWound> read_table(const TypedReadings& typed, const Counter* counter) {
  const bool inch = !typed.empty() && typed.front().inch;
  const char *fiber = unit_in(Amount::fiber_length, inch), *small = unit_in(Amount::small_length, inch);
  std::string table =
      fmt::format("layer;turns;{0};left ({1});middle ({1});right ({1});width ({1})\n",
                  counter != nullptr ? std::string("counter") : fmt::format("length ({})", fiber), small);
  for (const TypedRow& row : typed) {
    table += row.at_end ? "end" : row.layer ? fmt::format("{}", *row.layer) : "";
    for (const std::string& cell : row.cells) table += fmt::format(";{}", quoted(cell));
    table += "\n";
  }
  return read_as_wound(table, "", counter);
}

bool stands_before(const TypedRow& row, const Checkpoint& checkpoint) {
  return !row.at_end && (checkpoint.at_end || !row.layer || *row.layer < checkpoint.layer);
}

}  // namespace

bool TypedRow::empty() const {
  return std::all_of(cells.begin(), cells.end(), [](const std::string& cell) { return cell.empty(); });
}

bool TypedRow::same_place(const TypedRow& other) const {
  return layer == other.layer && at_end == other.at_end && (layer || at_end);
}

TypedReadings with_checkpoints(TypedReadings typed, const std::vector<Checkpoint>& checkpoints) {
  for (const Checkpoint& each : checkpoints) {
    TypedRow row;
    row.at_end = each.at_end;
    if (!each.at_end) row.layer = each.layer;
    row.inch = !typed.empty() && typed.front().inch;
    const bool there =
        std::any_of(typed.begin(), typed.end(), [&](const TypedRow& other) { return other.same_place(row); });
    if (there) continue;
    const auto place =
        std::find_if(typed.begin(), typed.end(), [&](const TypedRow& other) { return !stands_before(other, each); });
    typed.insert(place, std::move(row));
  }
  return typed;
}

TypedReadings in_units(TypedReadings typed, const Counter* counter, bool inch) {
  if (typed.empty() || typed.front().inch == inch) return typed;
  if (!all_empty(typed)) {
    const Result<AsWound> read = read_table(typed, counter);
    if (!read.ok()) return typed;
    for (const Reading& each : read.value().readings)
      typed.at(static_cast<std::size_t>(each.line) - 2).cells = cells_of(each, inch);
  }
  for (TypedRow& row : typed) row.inch = inch;
  return typed;
}

Result<AsWound> read_typed(const TypedReadings& typed, const Plan& plan) {
  return read_table(typed, counter_of(plan));
}

std::string place_words(const TypedRow& row) {
  return row.at_end ? "At the end" : row.layer ? fmt::format("After layer {}", *row.layer) : "On the way";
}

std::string typed_trouble(const TypedReadings& typed, const Issue& issue) {
  const auto row = static_cast<std::size_t>(issue.line) - 2;
  const std::string place =
      issue.line >= 2 && row < typed.size() ? fmt::format("{}, ", place_words(typed[row])) : "";
  return fmt::format("{}{}{}: {}.", place, issue.key, issue.value.empty() ? "" : fmt::format(" = {}", issue.value),
                     issue.what);
}

TypedReadings typed_of(const AsWound& wound) {
  TypedReadings typed;
  for (const Reading& r : wound.readings) {
    typed.push_back({r.layer, r.at_end, cells_of(r, false)});
  }
  return typed;
}

}  // namespace laywright
