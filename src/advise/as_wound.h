// What was measured on a real spool: a table of readings, CSV, one line each.
//
//   layer,layer_turns,counter_turns,counter_length_m,left_mm,middle_mm,right_mm
//   1,371.5,371.5,,150.43,150.44,150.43
//   ,500,500,,,150.86,
//   end,,1850.2,880.1,152.1,152.1,152.0
//
// `layer` is the layer that has just ended, `end` the end of the wind, empty anywhere else: then a counter says where.
// Lengths may be _mm or _in, counters _m or _ft. Empty cells were not measured, columns that nobody measured may be
// left out, and lines that start with # are remarks.
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
  std::optional<double> counter_length_mm;
  std::array<std::optional<double>, 3> diameter_mm;  // left, middle, right

  [[nodiscard]] bool empty() const;
};

struct AsWound {
  std::string file;
  std::vector<Reading> readings;
};

// Errors with file and line: not a table, an unknown column, no number, a reading that says neither layer nor counter,
// counters that run back. Lines in which nothing was measured are left out. From a file also as read_file has them.
[[nodiscard]] Result<AsWound> read_as_wound(std::string_view text, std::string file);
[[nodiscard]] Result<AsWound> load_as_wound(const std::filesystem::path& path);

// A table to fill in: a line for each of the first layers, and one for the end.
[[nodiscard]] std::string as_wound_template(const Plan& plan, int layers);

}  // namespace laywright
