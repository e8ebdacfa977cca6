#include "scene/ray_spans.h"

#include <algorithm>
#include <cmath>

namespace laywright {

namespace {

// x between two values.
RaySpan between_x(const Ray& ray, double low, double high) {
  if (ray.direction.x == 0.0) {
    if (ray.origin.x < low || ray.origin.x > high) return {0.0, -1.0};
    return {-HUGE_VAL, HUGE_VAL};
  }
  const double t0 = (low - ray.origin.x) / ray.direction.x, t1 = (high - ray.origin.x) / ray.direction.x;
  return {std::min(t0, t1), std::max(t0, t1)};
}

// Nearer to the axis than a radius.
RaySpan within_radius(const Ray& ray, double radius) {
  const double a = ray.direction.y * ray.direction.y + ray.direction.z * ray.direction.z;
  const double b = ray.origin.y * ray.direction.y + ray.origin.z * ray.direction.z;
  const double c = ray.origin.y * ray.origin.y + ray.origin.z * ray.origin.z - radius * radius;
  if (radius < 0.0) return {0.0, -1.0};
  if (a <= 0.0) return c <= 0.0 ? RaySpan{-HUGE_VAL, HUGE_VAL} : RaySpan{0.0, -1.0};
  const double under = b * b - a * c;
  if (under < 0.0) return {0.0, -1.0};
  const double root = std::sqrt(under);
  return {(-b - root) / a, (-b + root) / a};
}

// Where the ray crosses the half plane of an angle; HUGE_VAL if it does not.
double crossing(const Ray& ray, double angle) {
  const double ny = -std::sin(angle), nz = std::cos(angle);  // normal of the plane
  const double speed = ray.direction.y * ny + ray.direction.z * nz;
  if (speed == 0.0) return HUGE_VAL;
  const double t = -(ray.origin.y * ny + ray.origin.z * nz) / speed;
  const double along = (ray.origin.y + t * ray.direction.y) * nz - (ray.origin.z + t * ray.direction.z) * ny;
  return along >= 0.0 ? t : HUGE_VAL;
}

}  // namespace

std::vector<RaySpan> seen_spans(const View& view, const Ray& ray) {
  const std::vector<Sector> removed = removed_sectors(view);
  const RaySpan slab = between_x(ray, view.x_from_mm.value_or(-HUGE_VAL), view.x_to_mm.value_or(HUGE_VAL));
  const RaySpan all{std::max(0.0, slab.from), slab.to};
  std::vector<RaySpan> seen;
  if (all.from > all.to) return seen;
  std::vector<double> cuts{all.from, all.to};
  for (const Sector& sector : removed) {
    for (const double angle : {sector.from, sector.to}) {
      const double t = crossing(ray, angle);
      if (t > all.from && t < all.to) cuts.push_back(t);
    }
  }
  std::sort(cuts.begin(), cuts.end());
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    // Any place between two crossings speaks for all.
    const double middle = std::isinf(cuts[i + 1]) ? cuts[i] + 1.0 : 0.5 * (cuts[i] + cuts[i + 1]);
    if (is_removed(removed, angle_of(ray.origin + middle * ray.direction))) continue;
    if (!seen.empty() && seen.back().to == cuts[i])
      seen.back().to = cuts[i + 1];
    else
      seen.push_back({cuts[i], cuts[i + 1]});
  }
  return seen;
}

std::vector<RaySpan> spans_in_ring(const Ray& ray, const TurnExtent& ring) {
  const RaySpan slab = between_x(ray, ring.x_min, ring.x_max), outer = within_radius(ray, ring.r_max);
  const RaySpan within{std::max(slab.from, outer.from), std::min(slab.to, outer.to)};
  if (within.from > within.to || outer.from > outer.to || slab.from > slab.to) return {};
  const RaySpan hole = within_radius(ray, ring.r_min);
  if (hole.from > hole.to || hole.to < within.from || hole.from > within.to) return {within};
  std::vector<RaySpan> spans;
  if (within.from <= hole.from) spans.push_back({within.from, hole.from});
  if (hole.to <= within.to) spans.push_back({hole.to, within.to});
  return spans;
}

double first_common(const std::vector<RaySpan>& a, const std::vector<RaySpan>& b) {
  double first = HUGE_VAL;
  for (const RaySpan& one : a) {
    for (const RaySpan& other : b) {
      const double from = std::max(one.from, other.from);
      if (from <= std::min(one.to, other.to)) first = std::min(first, from);
    }
  }
  return first;
}

}  // namespace laywright
