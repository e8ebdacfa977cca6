// Numbers of the JSON documents: finite, or null. Inside the folder only.
#pragma once

#include <array>
#include <cmath>
#include <optional>

#include <nlohmann/json.hpp>

namespace laywright {

[[nodiscard]] inline nlohmann::ordered_json number(double value) {
  return std::isfinite(value) ? nlohmann::ordered_json(value) : nlohmann::ordered_json(nullptr);
}
[[nodiscard]] inline nlohmann::ordered_json number(const std::optional<double>& value, double unit = 1.0) {
  return value ? number(*value / unit) : nlohmann::ordered_json(nullptr);
}

// Left, middle, right.
[[nodiscard]] inline nlohmann::ordered_json sides_json(const std::array<double, 3>& of) {
  return {{"left", number(of[0])}, {"middle", number(of[1])}, {"right", number(of[2])}};
}

}  // namespace laywright
