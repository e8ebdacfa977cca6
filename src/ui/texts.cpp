#include "ui/texts.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include <fmt/format.h>

#include "base/inch.h"
#include "base/spelling.h"

namespace laywright {
std::string size_text(double mm, Units units) {
  return units == Units::inch ? fmt::format("{:.4f} in", mm / mm_per_inch) : fmt::format("{:.3f} mm", mm);
}

std::string fiber_length_text(double mm, Units units) {
  if (units == Units::inch) return fmt::format("{:.1f} ft", mm / mm_per_foot);
  return mm < 1e6 ? fmt::format("{:.2f} m", mm / 1e3) : fmt::format("{:.4f} km", mm / 1e6);
}

std::string play_time_text(double seconds) {
  const auto whole = static_cast<long long>(std::llround(std::max(0.0, seconds)));
  if (whole < 60) return fmt::format("{} s", whole);
  if (whole < 3600) return fmt::format("{} min {:02} s", whole / 60, whole % 60);
  return fmt::format("{} h {:02} min", whole / 3600, whole % 3600 / 60);
}

std::string spoken(std::string name) {
  std::replace(name.begin(), name.end(), '_', ' ');
  return capitalised(std::move(name));
}

}  // namespace laywright
