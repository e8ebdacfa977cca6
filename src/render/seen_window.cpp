#include "render/seen_window.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "scene/camera.h"

namespace laywright {
namespace {

constexpr double pi = std::numbers::pi;
constexpr int grid = 16;

// Calls visit(ray) for places that span the picture, its edges included.
template <class Visit>
void for_rays(const View& view, const Visit& visit) {
  for (int j = 0; j <= grid; ++j)
    for (int i = 0; i <= grid; ++i)
      visit(ray_through(view, static_cast<double>(view.width_px) * i / grid,
                        static_cast<double>(view.height_px) * j / grid));
}

// Distance to where a ray enters the endless cylinder about the axis.
std::optional<double> enter_cylinder(const Ray& ray, double radius) {
  const double a = ray.direction.y * ray.direction.y + ray.direction.z * ray.direction.z;
  const double b = ray.origin.y * ray.direction.y + ray.origin.z * ray.direction.z;
  const double c = ray.origin.y * ray.origin.y + ray.origin.z * ray.origin.z - radius * radius;
  const double inside = b * b - a * c;
  if (a < 1e-12 || inside < 0.0) return std::nullopt;
  const double distance = (-b - std::sqrt(inside)) / a;
  if (distance < 0.0) return std::nullopt;
  return distance;
}

struct Span {
  double low = 1e300, high = -1e300;

  void add(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
  [[nodiscard]] bool empty() const { return low > high; }
};

}  // namespace

SurfaceWindow seen_of_cylinder(const View& view, double radius_mm, double x_from_mm, double x_to_mm) {
  // Angles are counted from the direction to the eye, so that the seam does not matter.
  const Vec3 backward = -forward_of(view.camera);
  const double middle = angle_of(view.camera.projection == Projection::parallel ? backward : eye_of(view.camera));
  Span x, angles;
  bool grazed_before = false, grazed_after = false;
  for_rays(view, [&](const Ray& ray) {
    const std::optional<double> distance = enter_cylinder(ray, radius_mm);
    if (!distance) {
      // It passes the horizon, on the side where it comes nearest to the axis.
      const double squared = ray.direction.y * ray.direction.y + ray.direction.z * ray.direction.z;
      if (squared < 1e-12) return;
      const double along = -(ray.origin.y * ray.direction.y + ray.origin.z * ray.direction.z) / squared;
      const double side = std::remainder(angle_of(ray.origin + ray.direction * along) - middle, 2.0 * pi);
      (side < 0.0 ? grazed_before : grazed_after) = true;
      return;
    }
    const Vec3 place = ray.origin + ray.direction * *distance;
    const double angle = std::remainder(angle_of(place) - middle, 2.0 * pi);
    x.add(place.x);
    angles.add(angle);
    // Where sight grazes the surface, the horizon is not far, and the next ray may pass over it.
    const double steepness = -(ray.direction.y * place.y + ray.direction.z * place.z) / radius_mm;
    if (steepness < 0.45) (angle < 0.0 ? grazed_before : grazed_after) = true;
  });
  if (x.empty()) return {};
  SurfaceWindow window;
  window.x_from_mm = std::max(x.low, x_from_mm);
  window.x_to_mm = std::min(x.high, x_to_mm);
  if (std::abs(backward.x) > 0.9) {
    window.sector = {0.0, 2.0 * pi};
    return window;
  }
  const double eye_radius = radius_of(eye_of(view.camera));
  const double horizon = view.camera.projection == Projection::parallel || eye_radius < radius_mm
                             ? 0.5 * pi
                             : std::acos(radius_mm / eye_radius);
  window.sector = {middle + (grazed_before ? -horizon : angles.low),
                   middle + (grazed_after ? horizon : angles.high)};
  return window;
}

FaceWindow seen_of_face(const View& view, double angle, const FaceWindow& window) {
  const Vec3 normal(0.0, -std::sin(angle), std::cos(angle));
  const Vec3 outward(0.0, std::cos(angle), std::sin(angle));
  Span x, r;
  for_rays(view, [&](const Ray& ray) {
    const double slope = glm::dot(ray.direction, normal);
    if (std::abs(slope) < 1e-9) return;
    const double distance = -glm::dot(ray.origin, normal) / slope;
    if (distance < 0.0) return;
    const Vec3 place = ray.origin + ray.direction * distance;
    x.add(place.x);
    r.add(glm::dot(place, outward));
  });
  if (x.empty()) return {};
  const FaceWindow seen{std::max(x.low, window.x_from), std::min(x.high, window.x_to),
                        std::max(r.low, window.r_from), std::min(r.high, window.r_to)};
  return seen.x_from < seen.x_to && seen.r_from < seen.r_to ? seen : FaceWindow{};
}

double nearest_distance(const View& view, double radius_mm, double x_from_mm, double x_to_mm) {
  const Vec3 forward = forward_of(view.camera);
  double nearest = 1e300;
  for_rays(view, [&](const Ray& ray) {
    const std::optional<double> distance = enter_cylinder(ray, radius_mm);
    if (!distance) return;
    const Vec3 place = ray.origin + ray.direction * *distance;
    if (place.x < x_from_mm || place.x > x_to_mm) return;
    nearest = std::min(nearest, *distance * glm::dot(ray.direction, forward));
  });
  return nearest < 1e300 ? nearest : view.camera.distance_mm;
}

}  // namespace laywright
