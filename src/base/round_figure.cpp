#include "base/round_figure.h"

#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

namespace laywright {
namespace {

constexpr double rounding = 1e-9;

}  // namespace

double round_figure_below(double value) {
  const double power = std::pow(10.0, std::floor(std::log10(value * (1.0 + rounding))));
  for (const double times : {5.0, 2.0}) {
    if (value * (1.0 + rounding) >= times * power) return times * power;
  }
  return power;
}

double round_figure_above(double value) {
  const double below = round_figure_below(value);
  if (below >= value * (1.0 - rounding)) return below;
  return round_figure_below(2.5 * below);  // 1 to 2, 2 to 5, 5 to 10
}

int decimals_of_step(double step) { return std::max(0, static_cast<int>(std::ceil(-std::log10(step) - rounding))); }

double without_noise(double value) { return std::stod(fmt::format("{:.9g}", value)); }

int decimals_for(double size, int digits) {
  if (!(size > 0.0)) return digits - 1;
  return std::clamp(digits - 1 - static_cast<int>(std::floor(std::log10(size))), 0, 7);
}

}  // namespace laywright
