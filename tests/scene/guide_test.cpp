// The guide in the picture: where the plan's motion puts it, and a free fiber that touches the wind as a tangent does.
#include <catch2/catch.hpp>

#include <glm/geometric.hpp>

#include <map>
#include <numbers>

#include "scene/guide_pose.h"
#include "scenes.h"

using namespace laywright;
using scenes::random_source;
using scenes::source_of;

namespace {

constexpr double pi = std::numbers::pi;

// 1.02 mm a turn from 0.5 mm to 20 mm and back, no play: a triangle.
Plan triangle_plan(double free_length_mm, double turns) {
  PlanDraft draft;
  draft.spool.barrel_diameter_mm = 100.0;
  draft.spool.flange_diameter_mm = 140.0;
  draft.spool.inside_width_mm = 20.5;
  draft.fiber.diameter_mm = 1.0;
  draft.fiber.friction = Fiber::held;
  draft.traverse.pitch_mm = 1.02;
  draft.traverse.left_stop_mm = 0.5;
  draft.traverse.right_stop_mm = 0.5;
  draft.traverse.free_length_mm = free_length_mm;
  draft.wind.turns = turns;
  return check(draft).value();
}

SceneSource laid(const Plan& plan) {
  Progress progress;
  return source_of(plan, lay(plan, {}, progress).value());
}

// The least distance of the axis from the infinite line through two places, both seen along the axis.
double distance_from_axis(const Vec3& a, const Vec3& b) {
  const double length = std::hypot(b.y - a.y, b.z - a.z);
  return std::abs(a.y * b.z - a.z * b.y) / length;
}

}  // namespace

TEST_CASE("the guide in the scene stands where the plan's triangle puts it") {
  const SceneSource source = laid(triangle_plan(80.0, 60.0));
  for (double turn = 0.1; turn < 59.0; turn += 1.7) {
    INFO(turn);
    const double travel = std::fmod(1.02 * turn, 39.0);
    const double expected = 0.5 + (travel <= 19.5 ? travel : 39.0 - travel);
    View view;
    view.until_turn = turn;
    const Scene scene = make_scene(source, view);
    REQUIRE(scene.guide);
    CHECK(scene.guide->pose.fiber_end.x == Approx(expected).margin(1e-6));
    CHECK(scene.guide->pose.eye_middle.x == Approx(expected).margin(1e-6));
  }
}

TEST_CASE("the guide of a scattering plan with play is the model's, and its fiber lies in its seat") {
  PlanDraft draft = triangle_plan(50.0, 80.0).draft();
  draft.traverse.guide_play_mm = 0.6;
  draft.traverse.pitch_scatter = 0.02;
  draft.traverse.reversal.kind = ReversalKind::dwell;
  draft.traverse.reversal.turns = 0.5;
  const Plan plan = check(draft).value();
  const SceneSource source = laid(plan);
  Guide guide(plan, source.build().seed);
  double turned = 0.0;
  bool beside = false;
  for (double turn = 0.3; turn < 79.0; turn += 2.3) {
    for (; turned < turn - 1e-12;) turned += guide.advance(2.0 * pi * (turn - turned)).angle / (2.0 * pi);
    const GuidePose pose = guide_pose(source, turn);
    INFO(turn);
    CHECK(pose.fiber_end.x == Approx(guide.x()).margin(1e-9));
    const double seat = pose.fiber_end.x - pose.eye_middle.x;
    CHECK(std::abs(seat) <= 0.3 + 1e-9);
    beside = beside || std::abs(seat) > 0.05;
  }
  CHECK(beside);
}

TEST_CASE("the free fiber is a tangent of the wind: it touches where it is laid, and nowhere goes into the wind") {
  for (std::uint64_t seed = 700; seed < 706; ++seed) {
    const SceneSource source = random_source(seed);
    const double free_mm = source.plan().traverse().free_length_mm;
    for (const double share : {0.07, 0.33, 0.5, 0.81, 0.97}) {
      const GuidePose pose = guide_pose(source, share * source.build().turns);
      INFO(seed << " at " << pose.turn);
      CHECK(radius_of(pose.lay_point) == Approx(pose.lay_r_mm));
      if (free_mm <= 0.0) continue;
      CHECK(distance_from_axis(pose.lay_point, pose.fiber_end) == Approx(pose.lay_r_mm).epsilon(1e-9));
      // Pythagoras: square to the axis the fiber is as long as the free length.
      CHECK(std::hypot(radius_of(pose.fiber_end), 0.0) == Approx(std::hypot(pose.lay_r_mm, free_mm)));
      // It is laid towards rising angles, so that the fiber still to come lies ahead.
      const double ahead = std::remainder(angle_of(pose.fiber_end) - pose.angle, 2.0 * pi);
      CHECK(ahead == Approx(std::atan(free_mm / pose.lay_r_mm)).margin(1e-9));
    }
  }
}

TEST_CASE("steady lag: the guide is ahead by free length times pitch over circumference") {
  // Derived: dx/ds = (x_g - x) / L, in the steady state L p / (2 pi R), of a fiber that never slips.
  const SceneSource source = laid(triangle_plan(80.0, 18.0));
  const GuidePose pose = guide_pose(source, 14.0);
  CHECK(pose.lag_mm() == Approx(80.0 * 1.02 / (2.0 * pi * 50.5)).epsilon(2e-3));
}

TEST_CASE("there is a guide only while the wind is not at its end, and only where it is wanted") {
  const SceneSource source = laid(triangle_plan(80.0, 20.0));
  View view;
  CHECK_FALSE(make_scene(source, view).guide);
  view.until_turn = 20.0;
  CHECK_FALSE(make_scene(source, view).guide);
  view.until_turn = 12.0;
  CHECK(make_scene(source, view).guide);
  view.guide = false;
  CHECK_FALSE(make_scene(source, view).guide);
}

TEST_CASE("the ring is a closed surface around the fiber, and its depths are within the picture's") {
  const SceneSource source = laid(triangle_plan(80.0, 20.0));
  const GuideSolid solid = make_guide(source, guide_pose(source, 7.3));
  const Vec3 way = glm::normalize(solid.pose.fiber_end - solid.pose.lay_point);
  std::map<std::pair<std::uint32_t, std::uint32_t>, int> edges;
  for (std::size_t i = 0; i < solid.eye.triangles.size(); i += 3) {
    for (std::size_t k = 0; k < 3; ++k) {
      ++edges[{solid.eye.triangles[i + k], solid.eye.triangles[i + (k + 1) % 3]}];
    }
    const auto place = [&](std::size_t k) {
      const MeshVertex& v = solid.eye.vertices[solid.eye.triangles[i + k]];
      return Vec3{v.x, v.y, v.z};
    };
    const MeshVertex& v = solid.eye.vertices[solid.eye.triangles[i]];
    CHECK(glm::dot(glm::cross(place(1) - place(0), place(2) - place(0)), Vec3{v.nx, v.ny, v.nz}) > 0.0);
  }
  for (const auto& [edge, count] : edges) {
    CHECK(count == 1);
    CHECK(edges.count({edge.second, edge.first}) == 1);
  }
  double nearest = 1e9;
  for (const MeshVertex& v : solid.eye.vertices) {
    const Vec3 off = Vec3{v.x, v.y, v.z} - solid.pose.eye_middle;
    nearest = std::min(nearest, glm::length(off - glm::dot(off, way) * way));
  }
  CHECK(nearest > 0.5 * source.d());  // the fiber goes through

  View view;
  view.camera = fit_camera(source.plan(), view);
  const Sphere depths = depths_with(sphere_around(source.plan()), solid, view.camera);
  for (const MeshVertex& v : solid.eye.vertices) {
    const glm::dvec4 clip = eye_to_clip(view.camera, 16.0 / 9.0, depths.centre, depths.radius) *
                            world_to_eye(view.camera) * glm::dvec4(v.x, v.y, v.z, 1.0);
    CHECK(std::abs(clip.z / clip.w) <= 1.0 + 1e-6);
  }
}
