// What lies under the pointer, and what is known of it.
//
// The fiber is a chain of capsules: straight pieces of diameter d between the nodes, in space. What cuts remove is not
// hit; where a ray enters through the face of a cut, it hits the capsule that is cut there.
#pragma once

#include <optional>

#include "measure/measurements.h"
#include "scene/camera.h"
#include "scene/scene_source.h"

namespace laywright {

struct FiberHit {
  std::size_t node = 0;   // the nearer end of the piece that was hit
  std::size_t piece = 0;  // the first node of that piece
  double distance = 0.0;  // along the ray, mm
  Vec3 place{0.0, 0.0, 0.0};
};

// The first fiber that the ray meets of what the view shows (faded layers and spool do not count); none if it meets
// none. Exact, and quick whatever the number of turns: extents of turns are opened from the nearest on.
[[nodiscard]] std::optional<FiberHit> pick_fiber(const SceneSource& source, const View& view, const Ray& ray);

// One ray against one capsule: distance along the ray to where it first is inside, 0 when it begins inside; none when
// it misses. `leave` (when not null) gets where it leaves.
[[nodiscard]] std::optional<double> ray_capsule(const Ray& ray, const Vec3& a, const Vec3& b, double radius,
                                                double* leave = nullptr);

struct NodeFacts {
  std::size_t node = 0;
  double turn = 0.0;  // from the start of the wind, 0.0 there
  int layer = 0;
  int direction = 1;           // of the stroke: +1 to the right
  double turn_in_layer = 0.0;  // from where the stroke began
  double length_mm = 0.0;      // from the start of the wind
  double x_mm = 0.0, r_mm = 0.0, angle_deg = 0.0;
  Support support = Support::turn;
  bool rides_up = false;
  std::optional<double> rise_d, gap_d;
  std::optional<std::size_t> before, after;  // one turn back, one turn on along the fiber, same station
  std::optional<std::size_t> left, right;    // nearest turns of the same layer beside it (colouring.h)
  std::optional<std::size_t> below, above;   // next fiber under and over its centre at its station
};

// Precondition: node is one of the build's.
[[nodiscard]] NodeFacts facts_of(const SceneSource& source, std::size_t node);

// At a node's station: the newest node laid before it over or under the same x, and the oldest after it, within d/2.
[[nodiscard]] std::optional<std::size_t> node_below(const SceneSource& source, std::size_t node);
[[nodiscard]] std::optional<std::size_t> node_above(const SceneSource& source, std::size_t node);

}  // namespace laywright
