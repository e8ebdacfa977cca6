// One axial section of a wind, for a program that knows discs alone: where the guide stands whenever it passes, and the
// circles that the lay model left in it. Lengths in diameters, heights from the barrel.
#pragma once

#include <algorithm>
#include <cstddef>
#include <numbers>
#include <vector>

#include "lay/guide.h"
#include "lay/lay.h"
#include "physics_pile.h"

namespace laywright::bench {

inline double width_d(const Plan& plan) { return plan.spool().inside_width_mm / plan.fiber().diameter_mm; }

inline void advance(Guide& guide, double angle) {
  while (angle > 1e-9) angle -= guide.advance(angle).angle;
}

// The guide's x as it passes the section at `angle` (rad, 0 <= angle < 2 pi), once a turn, where a circle has room.
inline std::vector<double> arrivals(const Plan& plan, std::size_t circles, double angle = 0.0) {
  Guide guide(plan, 1);
  advance(guide, angle);
  std::vector<double> xs;
  while (xs.size() < circles) {
    xs.push_back(std::clamp(guide.x() / plan.fiber().diameter_mm, 0.5, width_d(plan) - 0.5));
    advance(guide, 2.0 * std::numbers::pi);
  }
  return xs;
}

// In the order in which they were laid.
inline std::vector<Place> section_at(const Plan& plan, const Build& build, int station) {
  const double d = plan.fiber().diameter_mm;
  const auto turn = static_cast<std::size_t>(build.stations_per_turn);
  std::vector<Place> places;
  for (auto k = static_cast<std::size_t>(station); k < build.nodes.size(); k += turn)
    places.push_back({build.nodes.x(k) / d, (build.nodes.r(k) - 0.5 * plan.spool().barrel_diameter_mm) / d});
  return places;
}

}  // namespace laywright::bench
