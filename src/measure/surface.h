// The wound surface: the uppermost of all fiber circles at each x and each station, the barrel where it is bare.
//
// Resolution: eight points per fiber diameter, at least 64 and at most 16384 over the width. Eight points
// integrate the half circle of a turn's crest to 1 % of a diameter even when every turn falls on the same
// points; on a helix the errors cancel over the angle.
//
// The crest at x is the highest surface within a diameter of x, or within half a pitch where that is more: what a measuring
// jaw touches that is two diameters wide, or as wide as the turns of the last layer lie apart. Outer diameters and edges are
// taken from crests, since a jaw feels neither the grooves between turns nor the bare barrel between those of a coarse layer.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "base/progress.h"
#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// The parts of the width in which the surface is compared: left and right edge, the first and last 5 % of the
// width but at least 3 d (and never more than a quarter of it); middle, the central half.
enum class Zone { left, middle, right };
inline constexpr std::size_t zone_count = 3;

struct Extent {
  double from_mm = 0.0, to_mm = 0.0;
};
[[nodiscard]] std::array<Extent, zone_count> zones_of(const Plan& plan);

// Pitch of the plan in a layer (1 = the first), mm, three of its standard deviations added.
[[nodiscard]] double widest_pitch_mm(const Plan& plan, int layer);

// Mean crest radius over angle and x of each zone, mm.
using ZoneRadii = std::array<double, zone_count>;

struct Surface {
  SurfaceProfile profile;
  std::vector<double>
      crest_mm;  // mean crest radius over the angle at each of the profile's places, after the last stroke
  std::vector<ZoneRadii> after_stroke;  // after each stroke of the build
  std::vector<EdgeShapes> edges;        // after each stroke
  double greatest_mm = 0.0;             // outer radius of the highest fiber, exact; the barrel's for an empty build
  std::optional<std::size_t> greatest_node;  // of equals the first
  double volume_mm3 = 0.0;                   // between the barrel, the flange faces and the surface
};

// Stops early and returns an incomplete surface when cancelled.
[[nodiscard]] Surface find_surface(const Plan& plan, const Build& build, Progress& progress);

// After that stroke, as last_whole_stroke says it; without one, after the last.
[[nodiscard]] OuterDiameter outer_diameter(const Build& build, const Surface& surface,
                                           std::optional<std::size_t> last_whole);

// None where the last stroke is that whole one.
[[nodiscard]] std::optional<UnfinishedLayer> unfinished_layer(const Build& build, const Surface& surface,
                                                              std::optional<std::size_t> last_whole);

// Fiber volume over the volume between the barrel, the flange faces and the surface; 0 for an empty build.
[[nodiscard]] double fill_factor(const Build& build, const Surface& surface);

}  // namespace laywright
