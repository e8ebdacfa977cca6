// Cameras: what they promise to show is in the picture.
#include <catch2/catch.hpp>

#include <glm/geometric.hpp>
#include <glm/vec4.hpp>

#include <numbers>

#include "scenes.h"

using namespace laywright;
using scenes::Draw;
using scenes::random_source;

namespace {

View draw_view(Draw& draw) {
  View view;
  view.width_px = 200 + static_cast<int>(draw.below(3000));
  view.height_px = 200 + static_cast<int>(draw.below(2000));
  view.camera.azimuth_deg = draw.between(-360.0, 360.0);
  view.camera.elevation_deg = draw.between(-90.0, 90.0);
  view.camera.field_of_view_deg = draw.between(10.0, 70.0);
  view.camera.projection = draw.below(2) == 0 ? Projection::parallel : Projection::perspective;
  view.dimensions = draw.below(2) == 0;
  return view;
}

}  // namespace

TEST_CASE("directions of a camera are a right-handed frame, and azimuth and elevation mean what the header says") {
  Camera camera;
  camera.azimuth_deg = 0.0;
  camera.elevation_deg = 0.0;
  CHECK(glm::length(forward_of(camera) - Vec3{0.0, 0.0, -1.0}) < 1e-12);
  CHECK(glm::length(up_of(camera) - Vec3{0.0, 1.0, 0.0}) < 1e-12);
  CHECK(glm::length(right_of(camera) - Vec3{1.0, 0.0, 0.0}) < 1e-12);
  camera.azimuth_deg = 90.0;
  CHECK(glm::length(eye_of(camera) - (camera.target + Vec3{camera.distance_mm, 0.0, 0.0})) < 1e-9);
  camera.elevation_deg = 90.0;
  CHECK(glm::length(eye_of(camera) - (camera.target + Vec3{0.0, camera.distance_mm, 0.0})) < 1e-9);
}

TEST_CASE("fit_camera shows all of the spool, and is not farther away than needed") {
  Draw draw(5);
  for (int i = 0; i < 300; ++i) {
    const Plan plan = random_plans::plan_of(random_plans::draft(400 + static_cast<std::uint64_t>(i)));
    View view = draw_view(draw);
    view.camera = fit_camera(plan, view);
    const SpoolSolid solid = make_spool(plan, {}, 72);
    double nearest = 1.0;  // to the edge, as a share of the half picture
    for (const Mesh* mesh : {&solid.barrel, &solid.left_flange, &solid.right_flange}) {
      for (const MeshVertex& v : mesh->vertices) {
        const auto at = in_picture(view, {v.x, v.y, v.z});
        REQUIRE(at);
        nearest = std::min({nearest, 2.0 * at->x / view.width_px, 2.0 - 2.0 * at->x / view.width_px,
                            2.0 * at->y / view.height_px, 2.0 - 2.0 * at->y / view.height_px});
      }
    }
    // A flange with run-out is thinner than the space that is kept for it.
    const double margin = view.dimensions ? 0.16 : 0.06;
    CHECK(nearest >= margin - 1e-3);
    if (plan.spool().flange_runout_mm == 0.0) CHECK(nearest <= margin + 0.01);
  }
}

TEST_CASE("a ray through a pixel meets the places that are drawn there") {
  Draw draw(6);
  for (int i = 0; i < 1000; ++i) {
    View view = draw_view(draw);
    view.camera.target = {draw.between(-50.0, 50.0), draw.between(-50.0, 50.0), draw.between(-50.0, 50.0)};
    const double px = draw.between(0.0, view.width_px), py = draw.between(0.0, view.height_px);
    const Ray ray = ray_through(view, px, py);
    CHECK(glm::length(ray.direction) == Approx(1.0));
    const auto at = in_picture(view, ray.origin + draw.between(100.0, 900.0) * ray.direction);
    REQUIRE(at);
    CHECK(at->x == Approx(px).margin(1e-6));
    CHECK(at->y == Approx(py).margin(1e-6));
  }
}

TEST_CASE("the matrices put a place where in_picture does, between near and far") {
  Draw draw(7);
  const Plan plan = random_plans::plan_of(random_plans::draft(3));
  const Sphere sphere = sphere_around(plan);
  for (int i = 0; i < 300; ++i) {
    View view = draw_view(draw);
    view.camera = fit_camera(plan, view);
    const double aspect = static_cast<double>(view.width_px) / view.height_px;
    const Vec3 off{draw.between(-1.0, 1.0), draw.between(-1.0, 1.0), draw.between(-1.0, 1.0)};
    const Vec3 place = sphere.centre + 0.57 * sphere.radius * off;
    const glm::dvec4 clip = eye_to_clip(view.camera, aspect, sphere.centre, sphere.radius) *
                            world_to_eye(view.camera) * glm::dvec4(place, 1.0);
    const auto at = in_picture(view, place);
    REQUIRE(at);
    CHECK((clip.x / clip.w + 1.0) * 0.5 * view.width_px == Approx(at->x).margin(1e-6));
    CHECK((1.0 - clip.y / clip.w) * 0.5 * view.height_px == Approx(at->y).margin(1e-6));
    CHECK(std::abs(clip.z / clip.w) <= 1.0);
  }
}
