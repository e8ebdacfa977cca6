#include "paper/section_cut.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace laywright {

double SectionCut::surface_radius(double from_x_mm, double to_x_mm) const {
  double radius = barrel(std::clamp(0.5 * (from_x_mm + to_x_mm), 0.0, inside_width_mm));
  for (const Turn& turn : turns) {
    if (turn.x_mm >= from_x_mm && turn.x_mm <= to_x_mm) radius = std::max(radius, turn.r_mm + turn.half_mm);
  }
  return radius;
}

SectionCut cut_section(const Plan& plan, const Build& build, double angle_deg) {
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const double share = angle_deg / 360.0 - std::floor(angle_deg / 360.0);
  const std::size_t station = static_cast<std::size_t>(std::lround(share * build.stations_per_turn)) % stations;

  SectionCut cut;
  cut.angle_deg = 360.0 * static_cast<double>(station) / build.stations_per_turn;
  cut.fiber_diameter_mm = build.fiber_diameter_mm;
  const Spool& spool = plan.spool();
  cut.inside_width_mm = spool.inside_width_mm;
  cut.rim_radius_mm = 0.5 * spool.flange_diameter_mm;
  cut.barrel_left_mm = 0.5 * spool.barrel_diameter_mm;
  cut.barrel_right_mm = cut.barrel_left_mm + 0.5 * spool.barrel_taper_mm;
  const Section empty = Section::of(plan, cut.angle_deg * rad_per_deg);
  // The lay model's faces bound the fiber's centre: half a diameter inward of the real ones.
  const auto offset = [&](const FaceLine& face) {
    return 0.5 * cut.fiber_diameter_mm * std::hypot(1.0, face.slope);
  };
  cut.left = {empty.left().at_axis - offset(empty.left()), empty.left().slope};
  cut.right = {empty.right().at_axis + offset(empty.right()), empty.right().slope};

  cut.layers = build.strokes.size();
  std::size_t stroke = 0;
  for (std::size_t k = station; k < build.nodes.size(); k += stations) {
    while (stroke + 1 < build.strokes.size() && build.strokes[stroke + 1].first_node <= k) ++stroke;
    cut.turns.push_back({build.nodes.x(k), build.nodes.r(k), stroke + 1, build.half_mm(k)});
  }
  return cut;
}

}  // namespace laywright
