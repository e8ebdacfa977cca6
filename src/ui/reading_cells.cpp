#include "ui/reading_cells.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/quantity_text.h"

namespace laywright {

const Checkpoint* checkpoint_of(const std::vector<Checkpoint>& checkpoints, const TypedRow& row) {
  const auto found = std::find_if(checkpoints.begin(), checkpoints.end(), [&](const Checkpoint& each) {
    return row.at_end ? each.at_end : !each.at_end && row.layer == each.layer;
  });
  return found == checkpoints.end() ? nullptr : &*found;
}

// What the field shows while it is empty: what it should be.
std::string planned_in(const Checkpoint* at, std::size_t cell, bool inch) {
  if (at == nullptr) return "";
  switch (cell) {
    case 0: return figure(at->turns, 1);
    case 1:
      return at->counter_reading ? figure(*at->counter_reading, 0)
                                 : figure_in(Amount::fiber_length, at->length_mm / 1000.0, 1, inch);
    case 2:
    case 3:
    case 4: return figure_in(Amount::small_length, at->outer_diameter_mm[cell - 2], 2, inch);
    default: return "";
  }
}

std::vector<std::string> reading_heads(const Counter* counter, bool inch) {
  const char* small = unit_in(Amount::small_length, inch);
  return {"Turns",
          counter != nullptr ? fmt::format("Counter, {}", counter->unit)
                             : fmt::format("Length, {}", unit_in(Amount::fiber_length, inch)),
          fmt::format("Left, {}", small),
          fmt::format("Middle, {}", small),
          fmt::format("Right, {}", small),
          fmt::format("Width, {}", small)};
}

}  // namespace laywright
