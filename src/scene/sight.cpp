#include "scene/sight.h"

#include <cmath>
#include <optional>

#include <glm/geometric.hpp>

#include "scene/camera.h"
#include "scene/pick.h"
#include "scene/spool_solid.h"

namespace laywright {

namespace {

Vec3 place_of(const MeshVertex& vertex) { return {vertex.x, vertex.y, vertex.z}; }

// Distance to a triangle from either side, by the volumes that the ray spans with its edges (Moeller and Trumbore,
// "Fast, Minimum Storage Ray/Triangle Intersection", 1997).
std::optional<double> meets(const Ray& ray, const Vec3& a, const Vec3& b, const Vec3& c) {
  const Vec3 ab = b - a, ac = c - a, across = glm::cross(ray.direction, ac);
  const double volume = glm::dot(ab, across);
  if (std::abs(volume) < 1e-15) return std::nullopt;
  const Vec3 from = ray.origin - a, turned = glm::cross(from, ab);
  const double u = glm::dot(from, across) / volume, v = glm::dot(ray.direction, turned) / volume;
  if (u < 0.0 || v < 0.0 || u + v > 1.0) return std::nullopt;
  return glm::dot(ac, turned) / volume;
}

bool hides(const Mesh& mesh, const Ray& ray, double before) {
  for (std::size_t i = 0; i + 2 < mesh.triangles.size(); i += 3) {
    const auto corner = [&](std::size_t k) { return place_of(mesh.vertices[mesh.triangles[i + k]]); };
    const auto distance = meets(ray, corner(0), corner(1), corner(2));
    if (distance && *distance > 0.0 && *distance < before) return true;
  }
  return false;
}

}  // namespace

InTheWay in_the_way(const SceneSource& source, const View& view, const Vec3& place) {
  const Vec3 forward = forward_of(view.camera), eye = eye_of(view.camera);
  const double depth = glm::dot(place - eye, forward);
  const bool parallel = view.camera.projection == Projection::parallel;
  const Ray ray = parallel ? Ray{place - depth * forward, forward} : Ray{eye, glm::normalize(place - eye)};
  const double before = glm::dot(place - ray.origin, ray.direction) - 1e-3 * source.d();
  InTheWay found;
  const auto hit = pick_fiber(source, view, ray);
  found.fiber = hit && hit->distance < before;
  const SpoolSolid solid = make_spool(source.plan(), view);
  found.barrel = hides(solid.barrel, ray, before);
  const GlassFlanges glass =
      glass_flanges(view.camera, source.plan().spool().inside_width_mm, view.flanges_see_through);
  found.flange = (!glass.left && hides(solid.left_flange, ray, before)) ||
                 (!glass.right && hides(solid.right_flange, ray, before));
  return found;
}

GlassFlanges glass_flanges(const Camera& camera, double inside_width_mm, bool both) {
  if (both) return {true, true};
  // Looked at along its face, a flange hides nothing, and its rim is not to flicker.
  constexpr double edge_on = 0.02;
  if (camera.projection == Projection::parallel) {
    const double along = forward_of(camera).x;
    return {along > edge_on, along < -edge_on};
  }
  const double x = eye_of(camera).x, beyond = edge_on * camera.distance_mm;
  return {x<-beyond, x> inside_width_mm + beyond};
}

}  // namespace laywright
