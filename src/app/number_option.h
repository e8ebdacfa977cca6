// What every option that takes a number checks: it is finite and within its range.
#pragma once

#include <algorithm>
#include <string>
#include <type_traits>

#include <fmt/format.h>

#include "app/command_line.h"
#include "app/ranges.h"
#include "base/readable.h"

namespace laywright {

// Refuses all but a number from `least` to `most`, both of them allowed, and says so. A comparison alone would let "nan"
// pass.
template <class Number>
[[nodiscard]] OptionCheck number_between(Number least, Number most) {
  const auto check = [least, most](const std::string& text) -> std::string {
    const auto number = read_number<Number>(text);
    if (number && *number >= least && *number <= most) return "";
    return fmt::format("\"{}\" is no {}number from {} to {}", readable(text),
                       std::is_integral_v<Number> ? "whole " : "", least, most);
  };
  return check;
}

// Refuses all but a width and a height in pixels, "1600x900", each from `least` to `most`.
[[nodiscard]] inline OptionCheck size_between(int least, int most) {
  const auto check = [least, most](const std::string& text) -> std::string {
    const auto size = read_pair<int>(text, 'x');
    if (size && std::min(size->first, size->second) >= least && std::max(size->first, size->second) <= most)
      return "";
    return fmt::format("\"{}\" is no WIDTHxHEIGHT in pixels, {} to {} each, like 1600x900", readable(text), least,
                       most);
  };
  return check;
}

}  // namespace laywright
