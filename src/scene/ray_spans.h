// Stretches of a ray: what cuts leave of it, and where it runs through rings around the axis.
#pragma once

#include <vector>

#include "scene/camera.h"
#include "scene/turn_index.h"

namespace laywright {

// Distances along a ray, mm.
struct RaySpan {
  double from = 0.0, to = 0.0;
};

// Where a view lets the ray see anything: before the eye, outside of removed sectors, within the x range. Rising.
[[nodiscard]] std::vector<RaySpan> seen_spans(const View& view, const Ray& ray);

// Where the ray is within a ring: x and r in the extent, ends included. None, one or two, rising.
[[nodiscard]] std::vector<RaySpan> spans_in_ring(const Ray& ray, const TurnExtent& ring);

// The least distance at which one of `a` and one of `b` overlap; HUGE_VAL if they do not.
[[nodiscard]] double first_common(const std::vector<RaySpan>& a, const std::vector<RaySpan>& b);

}  // namespace laywright
