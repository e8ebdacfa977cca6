#include <numbers>

#include "measure/surface.h"

namespace laywright {

OuterDiameter outer_diameter(const Surface& surface) {
  OuterDiameter diameter;
  diameter.greatest_mm = 2.0 * surface.greatest_mm;
  if (surface.after_stroke.empty()) return diameter;
  const ZoneRadii& last = surface.after_stroke.back();
  diameter.left_mm = 2.0 * last[static_cast<std::size_t>(Zone::left)];
  diameter.middle_mm = 2.0 * last[static_cast<std::size_t>(Zone::middle)];
  diameter.right_mm = 2.0 * last[static_cast<std::size_t>(Zone::right)];
  return diameter;
}

double fill_factor(const Build& build, const Surface& surface) {
  const double d = build.fiber_diameter_mm;
  const double fiber = 0.25 * std::numbers::pi * d * d * build.length_mm;
  // Nothing laid, nothing filled.
  return surface.volume_mm3 > 0.0 ? fiber / surface.volume_mm3 : 0.0;
}

}  // namespace laywright
