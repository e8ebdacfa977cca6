// Outer diameters left, middle and right from a photograph, over the same widths as those of a build.
#pragma once

#include <array>
#include <optional>

#include "measure/surface.h"
#include "photo/edge_profile.h"
#include "plan/lay_plan.h"

namespace laywright {

struct ZoneDiameter {
  double diameter_mm = 0.0, sigma_mm = 0.0;
  double seen_share = 0.0;  // of the zone's width, what no rim hides
};

// Less of a zone than this tells nothing of it.
inline constexpr double least_seen_share = 0.25;

// True where the picture shows each turn by itself: then a zone's diameter is the mean of crests, as zones_of and crest in
// surface.h define them. Where turns are blurred into one line, it is that line's mean, which stands lower than crests, by
// (1 - pi / 4) d for turns that touch: what a circle leaves of its square.
[[nodiscard]] bool shows_turns(const EdgeProfile& profile, const Plan& plan);

// None of a zone that is hidden.
[[nodiscard]] std::array<std::optional<ZoneDiameter>, zone_count> zone_diameters(const EdgeProfile& profile,
                                                                                 const Plan& plan);

}  // namespace laywright
