#include "photo/pinhole.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

// The place along the axis of which a point, so far toward the camera, is seen at u.
double along_of_point(const Pinhole& camera, double u, double toward_mm) {
  const double slope = u / camera.focal_px, sine = std::sin(camera.yaw_rad), cosine = std::cos(camera.yaw_rad);
  const double z = camera.middle_z_mm - toward_mm * cosine, x = camera.middle_x_mm + toward_mm * sine;
  return (slope * z - x) / (cosine - slope * sine);
}

}  // namespace

double Pinhole::depth_mm(double along_mm) const { return middle_z_mm + along_mm * std::sin(yaw_rad); }

SeenAngles seen_angles(double focal_px, double top_v, double bottom_v) {
  const double top = std::atan(top_v / focal_px), bottom = std::atan(bottom_v / focal_px);
  return {0.5 * (top - bottom), 0.5 * (top + bottom)};
}

double depth_of_known(double focal_px, double radius_mm, double top_v, double bottom_v) {
  const SeenAngles seen = seen_angles(focal_px, top_v, bottom_v);
  return radius_mm / std::sin(seen.half) * std::cos(seen.middle);
}

double radius_at(double focal_px, double depth_mm, double top_v, double bottom_v) {
  const SeenAngles seen = seen_angles(focal_px, top_v, bottom_v);
  return depth_mm / std::cos(seen.middle) * std::sin(seen.half);
}

double along_of_edge(const Pinhole& camera, double u, double radius_mm) {
  double along = 0.0;
  for (int pass = 0; pass < 4; ++pass) {
    along = along_of_point(camera, u, radius_mm * radius_mm / camera.depth_mm(along));
  }
  return along;
}

RimPoint rim_point(const Pinhole& camera, double along_mm, double radius_mm, double angle_rad) {
  const double toward = radius_mm * std::cos(angle_rad);
  const double sine = std::sin(camera.yaw_rad), cosine = std::cos(camera.yaw_rad);
  const double z = camera.depth_mm(along_mm) - toward * cosine;
  const double x = camera.middle_x_mm + along_mm * cosine + toward * sine;
  return {camera.focal_px * x / z, camera.focal_px * radius_mm * std::sin(angle_rad) / z};
}

double along_of_rim(const Pinhole& camera, double radius_mm, double u, double v, int side) {
  // f R sin(angle) = |v| (Z - R cos(angle) cos(yaw)): a sine of a sum.
  const double row = std::abs(v), level = row * std::cos(camera.yaw_rad);
  const double shift = std::atan2(level, camera.focal_px);
  double along = 0.0;
  for (int pass = 0; pass < 4; ++pass) {
    const double sum =
        std::asin(std::min(1.0, row * camera.depth_mm(along) / (radius_mm * std::hypot(camera.focal_px, level))));
    const double near = along_of_point(camera, u, radius_mm * std::cos(sum - shift));
    const double far = along_of_point(camera, u, radius_mm * std::cos(std::numbers::pi - sum - shift));
    along = side > 0 ? std::min(near, far) : std::max(near, far);
  }
  return along;
}

}  // namespace laywright
