// What was measured on a real spool: a table of readings, one row each, as a person writes it or a spreadsheet saves it.
//
//   layer,layer_turns,counter_turns,counter_length_m,left_mm,middle_mm,right_mm,width_mm
//   1,371.5,371.5,,150.43,150.44,150.43,94.7
//   ,500,500,,,150.86,,
//   end,,1850.2,880.1,152.1,152.1,152.0,
//
// `layer` is the layer that has just ended, `end` the end of the wind, empty anywhere else: then a counter says where. A length
// may be in any unit, in its heading: left_mm, "Left (in)", "length in km" (reading_columns.h). counter_length is the length
// that is wound; counter_reading what the machine's own counter shows, turned into that by the plan's [machine.counter].
// width is the last whole layer's, over its outermost turns. Empty cells were not measured, columns that nobody measured may be
// left out, and rows that start with # are remarks. cell_table.h says what may stand between cells, written_number.h how
// numbers may be written.
#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

struct Reading {
  int line = 0;
  std::optional<int> layer;  // that has just ended
  bool at_end = false;       // of the wind
  std::optional<double> layer_turns;
  std::optional<double> counter_turns;
  std::optional<double> counter_length_mm;  // wound; where the machine's counter was read, by its wheel and error
  std::optional<double> counter_reading;    // what that shows
  std::array<std::optional<double>, 3> diameter_mm;  // left, middle, right
  std::optional<double> width_mm;                    // of the last whole layer, over its outermost turns

  [[nodiscard]] bool empty() const;
};

// Where it was read: "layer 3", "end", "at 500 turns", "at 230.5 m".
[[nodiscard]] std::string place_words(const Reading& reading);

struct AsWound {
  std::string file;
  std::vector<Reading> readings;
};

// Errors with file, line and column: not a table, an unknown column, no number or one that may be read in two ways, a reading
// that says neither layer nor counter, counters that run back. Rows in which nothing was measured are left out. `counter`: the
// machine's, for a column of its readings; null: none. From a file also as read_file has them.
[[nodiscard]] Result<AsWound> read_as_wound(std::string_view text, std::string file,
                                            const Counter* counter = nullptr);
[[nodiscard]] Result<AsWound> load_as_wound(const std::filesystem::path& path, const Counter* counter = nullptr);

// The readings as such a table; reading it gives them again.
[[nodiscard]] std::string as_wound_table(const std::vector<Reading>& readings);

// The counter of the plan's machine; null: it has none.
[[nodiscard]] const Counter* counter_of(const Plan& plan);

// A table to fill in: a row for each of the first layers, and one for the end.
[[nodiscard]] std::string as_wound_template(const Plan& plan, int layers);

}  // namespace laywright
