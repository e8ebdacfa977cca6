#include "session/typed_readings.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "figures/csv_field.h"

namespace laywright {
namespace {

constexpr double mm_per_m = 1000.0;

std::string cell_of(const std::optional<double>& value, double unit = 1.0) {
  return value ? fmt::format("{:.10g}", *value / unit) : "";
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
    const bool there =
        std::any_of(typed.begin(), typed.end(), [&](const TypedRow& other) { return other.same_place(row); });
    if (there) continue;
    const auto place =
        std::find_if(typed.begin(), typed.end(), [&](const TypedRow& other) { return !stands_before(other, each); });
    typed.insert(place, std::move(row));
  }
  return typed;
}

Result<AsWound> read_typed(const TypedReadings& typed, const Plan& plan) {
  const Counter* counter = counter_of(plan);
  std::string table = fmt::format("layer;turns;{};left (mm);middle (mm);right (mm);width (mm)\n",
                                  counter != nullptr ? "counter" : "length (m)");
  for (const TypedRow& row : typed) {
    table += row.at_end ? "end" : row.layer ? fmt::format("{}", *row.layer) : "";
    for (const std::string& cell : row.cells) table += fmt::format(";{}", quoted(cell));
    table += "\n";
  }
  return read_as_wound(table, "", counter);
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
    typed.push_back(
        {r.layer,
         r.at_end,
         {cell_of(r.counter_turns),
          r.counter_reading ? cell_of(r.counter_reading) : cell_of(r.counter_length_mm, mm_per_m),
          cell_of(r.diameter_mm[0]), cell_of(r.diameter_mm[1]), cell_of(r.diameter_mm[2]), cell_of(r.width_mm)}});
  }
  return typed;
}

}  // namespace laywright
