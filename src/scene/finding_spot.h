// Exactly where a finding is: the places that were merged into it, and where a patch of surface is at its worst.
#pragma once

#include <vector>

#include "scene/scene_source.h"

namespace laywright {

struct FindingSpot {
  std::size_t first_node = 0, end_node = 0;  // fiber that it concerns
  std::size_t node = 0;                      // at whose station it is
  int layer = 1;
  double x_mm = 0.0, angle = 0.0;
  double heart_mm = 0.0;  // its radius in a section: of the fiber's centre line, or of the opening's middle
  double outer_mm = 0.0;  // its radius seen from outside: of the fiber's outer side, or of the surface

  [[nodiscard]] Vec3 heart() const { return in_space(x_mm, heart_mm, angle); }
  [[nodiscard]] Vec3 outer() const { return in_space(x_mm, outer_mm, angle); }
};

// Largest first, as Finding::places; none where the finding has none.
//   gap                   in the middle between the two turns, at the height of the left one
//   flange_gap            in the middle between turn and flange face
//   pile_up, edge_valley  where the surface of the zone is highest or lowest after the layer where it is worst: one
//   all others            the fiber itself
// Precondition: index into the findings.
[[nodiscard]] std::vector<FindingSpot> spots_of(const SceneSource& source, std::size_t finding);

// An edge goes all round: of a pile_up or an edge_valley, that has a place, the same among the angles whose cosine is greater: the
// top of the spool is at the angle 0.
[[nodiscard]] FindingSpot edge_spot_above(const SceneSource& source, std::size_t finding, double least_cosine);

}  // namespace laywright
