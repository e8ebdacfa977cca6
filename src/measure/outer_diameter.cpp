#include <cmath>

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

namespace {

// Volume over pi of the ring between the barrel's radius r0, the radius r1 and a flange face that opens by
// `taper` beyond the square one.
double opening_volume(double r0, double r1, double taper) {
  const double moment = (r1 * r1 * r1 - r0 * r0 * r0) / 3.0 - r0 * (r1 * r1 - r0 * r0) / 2.0;
  return 2.0 * std::tan(taper) * moment;
}

double mean_between(const SurfaceProfile& profile, const Extent& zone) {
  double sum = 0.0;
  int count = 0;
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
    if (profile.x_mm[i] < zone.from_mm || profile.x_mm[i] > zone.to_mm) continue;
    sum += profile.mean_mm[i];
    ++count;
  }
  return sum / count;
}

}  // namespace

double fill_factor(const Plan& plan, const Build& build, const SurfaceProfile& profile) {
  const Spool& spool = plan.spool();
  const double points = static_cast<double>(profile.x_mm.size());
  double over_pi = 0.0;
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
    const double share = profile.x_mm[i] / spool.inside_width_mm;
    const double barrel = 0.5 * (spool.barrel_diameter_mm + spool.barrel_taper_mm * share);
    over_pi += profile.mean_mm[i] * profile.mean_mm[i] - barrel * barrel;
  }
  over_pi *= spool.inside_width_mm / points;
  const auto zones = zones_of(plan);
  for (const Extent& edge : {zones.front(), zones.back()}) {
    over_pi += opening_volume(0.5 * spool.barrel_diameter_mm, mean_between(profile, edge), spool.flange_taper_rad);
  }
  const double d = build.fiber_diameter_mm;
  const double fiber_over_pi = 0.25 * d * d * build.length_mm;
  // A volume of pi * over_pi; nothing laid, nothing filled.
  return over_pi > 0.0 ? fiber_over_pi / over_pi : 0.0;
}

}  // namespace laywright
