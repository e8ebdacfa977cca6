// What touches a fiber at its station: whether it sits in a slit, and whether earlier turns lie over it.
#pragma once

#include <optional>

#include "lay/section.h"

namespace laywright {

// Within this much of touching, as a share of the diameter, counts as touching: what coatings give way to is more.
inline constexpr double touching_d = 0.01;

struct Surroundings {
  // A turn that was laid before lies over it: nearer than d beside it, and farther from the axis.
  bool under = false;
  // The mean lean of the two contacts that carry it, from the radius, rad: on each side of the one that leans least. A flange
  // face is a contact. None where it does not lie between two, where it lies on the barrel, and where the lean is less than asked for.
  std::optional<double> lean_rad;
};

// Of a fiber at (x, r); `section` holds what was laid before it.
[[nodiscard]] Surroundings surroundings(const Section& section, double x_mm, double r_mm, double least_lean_rad);

}  // namespace laywright
