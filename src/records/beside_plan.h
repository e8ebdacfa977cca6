// What was measured on a spool beside what its plan gave.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/spool_record.h"

namespace laywright {

enum class ReadQuantity { layer_turns, turns, length, diameter_left, diameter_middle, diameter_right, width };
inline constexpr std::size_t read_quantities = 7;

// "turns of the layer", "diameter, left".
[[nodiscard]] const char* words_for(ReadQuantity quantity);
// Stable: "layer_turns", "diameter_left".
[[nodiscard]] const char* name_of(ReadQuantity quantity);
// Lengths and diameters are in mm, all else counts turns.
[[nodiscard]] bool is_in_mm(ReadQuantity quantity);

struct BesidePlan {
  std::string place;  // "layer 3", "end", "at 1850.2 turns"
  ReadQuantity quantity = ReadQuantity::layer_turns;
  double measured = 0.0;
  std::optional<double> planned;  // none between layers, or beyond the last that was planned
};

// In the order of as_wound_of().
[[nodiscard]] std::vector<BesidePlan> readings_beside_plan(const SpoolRecord& record);

// Measured less planned of the outermost reading of that quantity that was planned; none where there is none.
[[nodiscard]] std::optional<double> outermost_difference(const SpoolRecord& record, ReadQuantity quantity);

}  // namespace laywright
