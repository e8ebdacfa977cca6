// The columns that a table of readings may have, by what people call them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/dial.h"

namespace laywright {

enum class ReadingField {
  layer,
  layer_turns,
  counter_turns,
  counter_length,
  counter_reading,
  left,
  middle,
  right,
  width
};

struct ReadingColumn {
  ReadingField field = ReadingField::layer;
  double unit = 1.0;  // by which its numbers are multiplied: mm, turns, or steps of the counter's own scale
};

// What a heading names, or one sentence that says what is wrong with it.
struct ReadHeading {
  std::optional<ReadingColumn> column;
  std::string problem;
};

// "counter_length_m", "Length (km)", "LEFT [in]", "width in mm": upper and lower case are alike, words stand apart by what is no
// letter, and the unit of a length comes last. `counter`: the machine's, for a column of its own readings; null: none.
[[nodiscard]] ReadHeading read_heading(std::string_view heading, const Counter* counter);

// Names of all columns, as this program writes them.
[[nodiscard]] std::vector<std::string> column_names();

}  // namespace laywright
