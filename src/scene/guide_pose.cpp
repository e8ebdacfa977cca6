#include "scene/guide_pose.h"

#include <algorithm>
#include <cmath>

#include <glm/geometric.hpp>

#include "base/units.h"

namespace laywright {

namespace {

// Two directions square to a third, of length 1.
struct Across {
  Vec3 first, second;
};
Across across(const Vec3& along) {
  const Vec3 other = std::abs(along.x) < 0.7 ? Vec3{1.0, 0.0, 0.0} : Vec3{0.0, 1.0, 0.0};
  const Vec3 first = glm::normalize(glm::cross(along, other));
  return {first, glm::cross(along, first)};
}

// A grid of vertices of so many rows, each a closed ring, joined by triangles whose outside is the side of the normals.
class RingMesh {
 public:
  RingMesh(std::uint32_t rows, std::uint32_t around, bool closed) : rows_(rows), around_(around), closed_(closed) {}

  void add(const Vec3& place, const Vec3& normal) {
    const auto f = [](double value) { return static_cast<float>(value); };
    mesh_.vertices.push_back({f(place.x), f(place.y), f(place.z), f(normal.x), f(normal.y), f(normal.z)});
  }

  Mesh finish() {
    for (std::uint32_t row = 0; row + (closed_ ? 0 : 1) < rows_; ++row) {
      for (std::uint32_t i = 0; i < around_; ++i) {
        const std::uint32_t a = row * around_ + i, b = row * around_ + (i + 1) % around_;
        const std::uint32_t up = (row + 1) % rows_ * around_;
        const std::uint32_t c = up + i, d = up + (i + 1) % around_;
        mesh_.triangles.insert(mesh_.triangles.end(), {a, b, c, c, b, d});
      }
    }
    return std::move(mesh_);
  }

 private:
  std::uint32_t rows_, around_;
  bool closed_;
  Mesh mesh_;
};

Mesh ring(const Vec3& middle, const Vec3& along, double radius, double thickness) {
  constexpr std::uint32_t rows = 48, around = 16;
  const Across sides = across(along);
  RingMesh mesh(rows, around, true);
  for (std::uint32_t row = 0; row < rows; ++row) {
    const double turned = full_turn * row / rows;
    const Vec3 outward = std::cos(turned) * sides.first + std::sin(turned) * sides.second;
    for (std::uint32_t i = 0; i < around; ++i) {
      const double at = full_turn * i / around;
      const Vec3 normal = std::cos(at) * outward - std::sin(at) * along;
      mesh.add(middle + radius * outward + thickness * normal, normal);
    }
  }
  return mesh.finish();
}

Mesh tube(const Vec3& from, const Vec3& to, double radius) {
  constexpr std::uint32_t around = 12;
  RingMesh mesh(2, around, false);
  const double length = glm::length(to - from);
  if (length <= 0.0) return {};
  const Across sides = across((to - from) / length);
  for (const Vec3& end : {from, to}) {
    for (std::uint32_t i = 0; i < around; ++i) {
      const double at = full_turn * i / around;
      const Vec3 normal = std::cos(at) * sides.first + std::sin(at) * sides.second;
      mesh.add(end + radius * normal, normal);
    }
  }
  return mesh.finish();
}

}  // namespace

GuidePose guide_pose(const SceneSource& source, double turn) {
  const Build& build = source.build();
  const NodeStore& nodes = build.nodes;
  const double stations = build.stations_per_turn;
  const auto last = static_cast<double>(nodes.size() - 1);
  GuidePose pose;
  pose.turn = std::clamp(turn, 0.0, std::min(build.turns, last / stations));
  const double node = pose.turn * stations;
  const auto before = static_cast<std::size_t>(node);
  const std::size_t after = std::min(before + 1, nodes.size() - 1);
  const double share = node - static_cast<double>(before);
  pose.angle = full_turn * (pose.turn - std::floor(pose.turn));
  pose.lay_r_mm = std::lerp(nodes.r(before), nodes.r(after), share);
  pose.lay_point = in_space(std::lerp(nodes.x(before), nodes.x(after), share), pose.lay_r_mm, pose.angle);
  const Vec3 onward{0.0, -std::sin(pose.angle), std::cos(pose.angle)};
  const Guide guide = source.guide().at(pose.turn);
  pose.fiber_end = pose.lay_point + source.plan().traverse().free_length_mm * onward;
  pose.fiber_end.x = guide.x();
  pose.eye_middle = pose.fiber_end;
  pose.eye_middle.x -= guide.seat();
  return pose;
}

GuideSolid make_guide(const SceneSource& source, const GuidePose& pose) {
  const double rim = 0.5 * source.plan().spool().flange_diameter_mm;
  const double hole = std::max(0.75 * (source.d() + source.plan().traverse().guide_play_mm), 0.03 * rim);
  const double thickness = 0.25 * hole;
  const Vec3 way = pose.fiber_end - pose.lay_point;
  const double length = glm::length(way);
  // Without a free length the guide stands at the lay point, and the fiber comes on along the tangent.
  const Vec3 tangent{0.0, -std::sin(pose.angle), std::cos(pose.angle)};
  const Vec3 along = length > source.d() ? way / length : tangent;
  GuideSolid solid;
  solid.pose = pose;
  solid.eye = ring(pose.eye_middle, along, hole + thickness, thickness);
  solid.fiber = tube(pose.lay_point, pose.fiber_end, 0.5 * source.d());
  solid.eye_radius_mm = hole + 2.0 * thickness;
  return solid;
}

Sphere depths_with(const Sphere& around, const GuideSolid& guide, const Camera& camera) {
  const Vec3 eye = eye_of(camera), forward = forward_of(camera);
  const double spool = glm::dot(around.centre - eye, forward);
  const double ring = glm::dot(guide.pose.eye_middle - eye, forward);
  if (ring + guide.eye_radius_mm <= 0.0) return around;
  const double from = std::min(spool - around.radius, ring - guide.eye_radius_mm);
  const double to = std::max(spool + around.radius, ring + guide.eye_radius_mm);
  return {eye + 0.5 * (from + to) * forward, 0.5 * (to - from)};
}

}  // namespace laywright
