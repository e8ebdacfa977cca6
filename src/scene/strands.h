// Fiber of the visible surface as lines, for views so close that each fiber is drawn round.
#pragma once

#include <cstdint>
#include <vector>

#include "scene/scene_source.h"

namespace laywright {

struct StrandPoint {
  float x_mm = 0.0F, r_mm = 0.0F;
  std::uint32_t node = 0;  // its angle is 2 pi (node % stations) / stations
  Rgba colour;
};

// points[first .. first + count) are consecutive nodes: count - 1 segments. count is 2 at least, but for a fiber of
// one node.
struct StrandRun {
  std::uint32_t first = 0, count = 0;
};

struct Strands {
  double fiber_diameter_mm = 0.0;
  std::size_t stations = 0;
  std::vector<StrandPoint> points;
  std::vector<StrandRun> runs;
  bool complete = true;  // false: more than `most_points` would have been needed, and none are given
};

struct SurfaceWindow {
  double x_from_mm = 0.0, x_to_mm = 0.0;
  Sector sector;  // a full turn or more: all round
};

// The fiber that a shell shows within the window: every node that a texel there names, and one node further along
// the fiber at either end, so that segments reach out of the window. `source` and `view` are those of the shell.
[[nodiscard]] Strands make_strands(const SceneSource& source, const View& view, const Shell& shell,
                                   const SurfaceWindow& window, std::size_t most_points = 200'000);

}  // namespace laywright
