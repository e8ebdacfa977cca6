#include <algorithm>
#include <cmath>

#include <glm/geometric.hpp>

#include "scene/pick.h"

namespace laywright {

namespace {

struct Span {
  double from = HUGE_VAL, to = -HUGE_VAL;

  void add(double t0, double t1) {
    from = std::min(from, t0);
    to = std::max(to, t1);
  }
};

// Where a t^2 + 2 b t + c <= 0, for a > 0.
std::optional<Span> below_zero(double a, double b, double c) {
  const double under = b * b - a * c;
  if (under < 0.0) return std::nullopt;
  const double root = std::sqrt(under);
  return Span{(-b - root) / a, (-b + root) / a};
}

void add_sphere(const Vec3& from, const Vec3& direction, const Vec3& centre, double radius, Span& inside) {
  const Vec3 off = from - centre;
  const auto span = below_zero(1.0, glm::dot(off, direction), glm::dot(off, off) - radius * radius);
  if (span) inside.add(span->from, span->to);
}

void add_cylinder(const Vec3& from, const Vec3& direction, const Vec3& a, const Vec3& b, double radius,
                  Span& inside) {
  const double length = glm::length(b - a);
  if (length <= 0.0) return;
  const Vec3 axis = (b - a) / length, off = from - a;
  const double along = glm::dot(direction, axis), start = glm::dot(off, axis);
  const Vec3 across = direction - along * axis, off_across = off - start * axis;
  const double speed2 = glm::dot(across, across), distance2 = glm::dot(off_across, off_across);
  Span span{-HUGE_VAL, HUGE_VAL};
  if (speed2 > 1e-18) {
    const auto round = below_zero(speed2, glm::dot(off_across, across), distance2 - radius * radius);
    if (!round) return;
    span = *round;
  } else if (distance2 > radius * radius) {
    return;
  }
  // Between the end planes.
  if (std::abs(along) > 1e-12) {
    const double t0 = -start / along, t1 = (length - start) / along;
    span.from = std::max(span.from, std::min(t0, t1));
    span.to = std::min(span.to, std::max(t0, t1));
  } else if (start < 0.0 || start > length) {
    return;
  }
  if (span.from <= span.to) inside.add(span.from, span.to);
}

}  // namespace

std::optional<double> ray_capsule(const Ray& ray, const Vec3& a, const Vec3& b, double radius, double* leave) {
  // From the point of the ray nearest to the capsule, so that a thin fiber far away loses no digits.
  const double near = glm::dot(0.5 * (a + b) - ray.origin, ray.direction);
  const Vec3 from = ray.origin + near * ray.direction;
  Span inside;  // a capsule is convex: its spheres and its cylinder join to one span
  add_sphere(from, ray.direction, a, radius, inside);
  add_sphere(from, ray.direction, b, radius, inside);
  add_cylinder(from, ray.direction, a, b, radius, inside);
  if (inside.from > inside.to || near + inside.to < 0.0) return std::nullopt;
  if (leave != nullptr) *leave = near + inside.to;
  return std::max(0.0, near + inside.from);
}

}  // namespace laywright
