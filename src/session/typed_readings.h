// What a person types into the checklist of a wind: a row for each checkpoint, as text.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "advise/as_wound.h"
#include "takeup/takeup_run.h"

namespace laywright {

// Turns; the length that is wound or, where the machine's counter is in the plan, what that shows; left, middle, right; width.
inline constexpr std::size_t reading_cells = 6;

struct TypedRow {
  std::optional<int> layer;  // that has ended; neither this nor the end: a counter says where
  bool at_end = false;
  std::array<std::string, reading_cells> cells;
  bool inch = false;  // lengths are typed in feet, diameters and widths in inches; else in m and mm

  [[nodiscard]] bool empty() const;
  [[nodiscard]] bool same_place(const TypedRow& other) const;
};

// All rows are in one system of units.
using TypedReadings = std::vector<TypedRow>;

// The same, with an empty row for each checkpoint that has none.
[[nodiscard]] TypedReadings with_checkpoints(TypedReadings typed, const std::vector<Checkpoint>& checkpoints);

// The same in that system of units, to ten digits. What cannot be read yet stays as it was typed, all of it: `inch` of the rows
// tells. `counter`: the machine's, or null.
[[nodiscard]] TypedReadings in_units(TypedReadings typed, const Counter* counter, bool inch);

// As the table of a file is read; its lines are the rows, from 2 on. Errors: as read_as_wound().
[[nodiscard]] Result<AsWound> read_typed(const TypedReadings& typed, const Plan& plan);

// What is wrong with it, by row and field as the checklist names them: "After layer 5, left: is not a number ...".
[[nodiscard]] std::string typed_trouble(const TypedReadings& typed, const Issue& issue);

// "After layer 5", "At the end"; by counter: "On the way".
[[nodiscard]] std::string place_words(const TypedRow& row);

// Of a table that was opened.
[[nodiscard]] TypedReadings typed_of(const AsWound& wound);

}  // namespace laywright
