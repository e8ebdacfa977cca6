#include "scene/flight.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>

#include "base/units.h"
#include "scene/camera.h"

namespace laywright {

namespace {

// From rest to rest, with no jerk felt at either end.
double eased(double share) { return share * share * (3.0 - 2.0 * share); }

// From one angle to another the shorter way; `full`: of a whole turn.
double turned(double from, double to, double share, double full) {
  return from + std::remainder(to - from, full) * share;
}

// On the axis every angle is the same place: that of the other end is taken.
Vec3 target_between(const Vec3& from, const Vec3& to, double share) {
  constexpr double on_axis = 1e-9;
  const double from_r = radius_of(from), to_r = radius_of(to);
  const double from_angle = from_r > on_axis ? angle_of(from) : angle_of(to);
  const double to_angle = to_r > on_axis ? angle_of(to) : from_angle;
  return in_space(std::lerp(from.x, to.x, share), std::lerp(from_r, to_r, share),
                  turned(from_angle, to_angle, share, 2.0 * std::numbers::pi));
}

// The least distance, not below the camera's, at which its eye is so far from the axis; the camera's own where it looks
// along the axis.
double distance_to_radius(const Camera& camera, double radius) {
  const Vec3 back = -forward_of(camera);
  const double a = back.y * back.y + back.z * back.z;
  const double b = camera.target.y * back.y + camera.target.z * back.z;
  const double c = camera.target.y * camera.target.y + camera.target.z * camera.target.z - radius * radius;
  const double under = b * b - a * c;
  if (a < 1e-6 || under < 0.0 || radius_of(eye_of(camera)) >= radius) return camera.distance_mm;
  return std::max(camera.distance_mm, (-b + std::sqrt(under)) / a);
}

}  // namespace

Camera camera_between(const Camera& from, const Camera& to, double share) {
  Camera camera = to;
  if (share >= 1.0) return camera;
  const double along = eased(std::max(0.0, share));
  if (along <= 0.0) {
    camera = from;
  } else {
    camera.target = target_between(from.target, to.target, along);
    camera.azimuth_deg = turned(from.azimuth_deg, to.azimuth_deg, along, 360.0);
    camera.elevation_deg = std::lerp(from.elevation_deg, to.elevation_deg, along);
    const double even = std::exp(std::lerp(std::log(from.distance_mm), std::log(to.distance_mm), along));
    // Half of the way back: enough to see both ends of it at once.
    const double back =
        0.5 * glm::length(to.target - from.target) / std::tan(0.5 * to.field_of_view_deg * rad_per_deg);
    camera.distance_mm = even + 0.5 * back * 4.0 * along * (1.0 - along);
  }
  // Both ends are outside of the spool, and so is the way.
  const double nearer = std::min(radius_of(eye_of(from)), radius_of(eye_of(to)));
  if (along > 0.0) camera.distance_mm = distance_to_radius(camera, nearer);
  camera.projection = to.projection;
  camera.field_of_view_deg = to.field_of_view_deg;
  return camera;
}

}  // namespace laywright
