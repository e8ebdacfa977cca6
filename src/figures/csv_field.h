// Fields of comma-separated values.
#pragma once

#include <cmath>
#include <optional>
#include <string>

#include <fmt/format.h>

namespace laywright {

// Nine digits: a micrometre in a kilometre of fiber. Empty where it is no number.
[[nodiscard]] inline std::string field(double value) {
  return std::isfinite(value) ? fmt::format("{:.9g}", value) : "";
}
[[nodiscard]] inline std::string field(const std::optional<double>& value) { return value ? field(*value) : ""; }

[[nodiscard]] inline std::string quoted(const std::string& text) {
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

}  // namespace laywright
