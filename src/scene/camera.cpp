#include "scene/camera.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>
#include <glm/gtc/matrix_transform.hpp>

#include "base/units.h"
#include "scene/coordinates.h"
#include "scene/spool_solid.h"

namespace laywright {

namespace {

double half_height_share(const Camera& camera) { return std::tan(0.5 * rad_per_deg * camera.field_of_view_deg); }

double aspect_of(const View& view) {
  return static_cast<double>(std::max(1, view.width_px)) / static_cast<double>(std::max(1, view.height_px));
}

// Ends of the solid spool along x, thickness of the flanges included.
struct Ends {
  double left = 0.0, right = 0.0;
};
Ends ends_of(const Plan& plan) {
  const Spool& spool = plan.spool();
  const double rim = 0.5 * spool.flange_diameter_mm, barrel = 0.5 * spool.barrel_diameter_mm;
  const double thickness = flange_thickness_share * spool.flange_diameter_mm;
  Ends ends{0.0, spool.inside_width_mm};
  for (const double angle : {0.0, std::numbers::pi}) {
    for (const double r : {barrel, rim}) {
      ends.left = std::min(ends.left, left_face_x(plan, r, angle));
      ends.right = std::max(ends.right, right_face_x(plan, r, angle));
    }
  }
  return {ends.left - thickness, ends.right + thickness};
}

}  // namespace

Vec3 forward_of(const Camera& camera) {
  const double azimuth = camera.azimuth_deg * rad_per_deg, elevation = camera.elevation_deg * rad_per_deg;
  return -Vec3{std::sin(azimuth) * std::cos(elevation), std::sin(elevation),
               std::cos(azimuth) * std::cos(elevation)};
}

Vec3 right_of(const Camera& camera) {
  const double azimuth = camera.azimuth_deg * rad_per_deg;
  return {std::cos(azimuth), 0.0, -std::sin(azimuth)};
}

Vec3 up_of(const Camera& camera) { return glm::cross(right_of(camera), forward_of(camera)); }

Vec3 eye_of(const Camera& camera) { return camera.target - camera.distance_mm * forward_of(camera); }

glm::dmat4 world_to_eye(const Camera& camera) {
  const Vec3 right = right_of(camera), up = up_of(camera), back = -forward_of(camera), eye = eye_of(camera);
  return {glm::dvec4(right.x, up.x, back.x, 0.0), glm::dvec4(right.y, up.y, back.y, 0.0),
          glm::dvec4(right.z, up.z, back.z, 0.0),
          glm::dvec4(-glm::dot(right, eye), -glm::dot(up, eye), -glm::dot(back, eye), 1.0)};
}

glm::dmat4 eye_to_clip(const Camera& camera, double aspect, const Vec3& centre, double radius) {
  const double middle = glm::dot(centre - eye_of(camera), forward_of(camera));
  const double far = std::max(middle + radius, 1e-3 * radius);
  if (camera.projection == Projection::parallel) {
    const double half = camera.distance_mm * half_height_share(camera);
    return glm::ortho(-half * aspect, half * aspect, -half, half, middle - radius, middle + radius);
  }
  // Nearer than a two-thousandth of the far end there is no depth left to tell things apart.
  const double near = std::max(middle - radius, far / 2000.0);
  return glm::perspective(camera.field_of_view_deg * rad_per_deg, aspect, near, std::max(far, 2.0 * near));
}

Sphere sphere_around(const Plan& plan) {
  const Ends ends = ends_of(plan);
  const double half = 0.5 * (ends.right - ends.left);
  return {{0.5 * (ends.left + ends.right), 0.0, 0.0}, std::hypot(half, 0.5 * plan.spool().flange_diameter_mm)};
}

double mm_per_px(const View& view) {
  return 2.0 * view.camera.distance_mm * half_height_share(view.camera) / std::max(1, view.height_px);
}

double distance_for(View view, double mm_per_pixel) {
  view.camera.distance_mm = 1.0;
  return mm_per_pixel / mm_per_px(view);
}

Camera turned(Camera camera, const Vec3& toward_eye) {
  constexpr double steepest = 70.0;
  const double level = std::hypot(toward_eye.x, toward_eye.z);
  camera.azimuth_deg = level > 1e-9 ? deg_per_rad * std::atan2(toward_eye.x, toward_eye.z) : 0.0;
  camera.elevation_deg = std::clamp(deg_per_rad * std::atan2(toward_eye.y, level), -steepest, steepest);
  return camera;
}

Ray ray_through(const View& view, double px, double py) {
  const Camera& camera = view.camera;
  const double scale = mm_per_px(view);
  const Vec3 across =
      (px - 0.5 * view.width_px) * scale * right_of(camera) + (0.5 * view.height_px - py) * scale * up_of(camera);
  if (camera.projection == Projection::parallel) return {eye_of(camera) + across, forward_of(camera)};
  return {eye_of(camera), glm::normalize(camera.distance_mm * forward_of(camera) + across)};
}

Projector::Projector(const View& view)
    : eye_(eye_of(view.camera)),
      forward_(forward_of(view.camera)),
      right_(right_of(view.camera)),
      up_(up_of(view.camera)),
      middle_(0.5 * view.width_px, 0.5 * view.height_px),
      per_mm_(1.0 / mm_per_px(view)),
      distance_mm_(view.camera.projection == Projection::parallel ? 0.0 : view.camera.distance_mm) {}

std::optional<glm::dvec2> Projector::operator()(const Vec3& place) const {
  const Vec3 from_eye = place - eye_;
  double scale = per_mm_;
  if (distance_mm_ > 0.0) {
    const double depth = glm::dot(from_eye, forward_);
    if (depth <= 0.0) return std::nullopt;
    scale *= distance_mm_ / depth;
  }
  return middle_ + scale * glm::dvec2(glm::dot(from_eye, right_), -glm::dot(from_eye, up_));
}

std::optional<glm::dvec2> in_picture(const View& view, const Vec3& place) { return Projector(view)(place); }

Camera fit_camera(const Plan& plan, const View& view) {
  const double margin = view.dimensions ? 0.16 : 0.06;
  const Ends ends = ends_of(plan);
  const double rim = 0.5 * plan.spool().flange_diameter_mm;
  Camera camera = view.camera;
  camera.target = {0.5 * (ends.left + ends.right), 0.0, 0.0};
  const double up_share = half_height_share(camera) * (1.0 - margin);
  const double right_share = up_share * aspect_of(view);
  double distance = 0.0;
  // The spool lies within the hull of its two rims.
  constexpr int places = 72;
  for (int i = 0; i < 2 * places; ++i) {
    const Vec3 place = in_space(i < places ? ends.left : ends.right, rim, 2.0 * std::numbers::pi * i / places);
    const Vec3 off = place - camera.target;
    const double toward = camera.projection == Projection::parallel ? 0.0 : -glm::dot(off, forward_of(camera));
    distance = std::max({distance, toward + std::abs(glm::dot(off, right_of(camera))) / right_share,
                         toward + std::abs(glm::dot(off, up_of(camera))) / up_share});
  }
  camera.distance_mm = distance;
  return camera;
}

}  // namespace laywright
