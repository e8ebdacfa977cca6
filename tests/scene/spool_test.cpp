// The spool's solids: closed, of the right volume, and where the faces of the lay model are.
#include <catch2/catch.hpp>

#include <array>
#include <map>
#include <numbers>

#include <glm/geometric.hpp>

#include "lay/section.h"
#include "scenes.h"

using namespace laywright;

namespace {

constexpr double turn = 2.0 * std::numbers::pi;

using Place = std::array<float, 3>;

Place place_of(const MeshVertex& v) { return {v.x + 0.0F, v.y + 0.0F, v.z + 0.0F}; }  // no minus zeros
Vec3 vec(const MeshVertex& v) { return {v.x, v.y, v.z}; }

// Each edge of a closed surface is used once in either direction.
bool is_closed(const Mesh& mesh) {
  std::map<std::pair<Place, Place>, int> edges;
  for (std::size_t i = 0; i < mesh.triangles.size(); i += 3) {
    for (std::size_t j = 0; j < 3; ++j) {
      const Place a = place_of(mesh.vertices[mesh.triangles[i + j]]);
      const Place b = place_of(mesh.vertices[mesh.triangles[i + (j + 1) % 3]]);
      ++edges[{a, b}];
    }
  }
  for (const auto& [edge, count] : edges) {
    const auto back = edges.find({edge.second, edge.first});
    if (count != 1 || back == edges.end() || back->second != 1) return false;
  }
  return !edges.empty();
}

// By the divergence theorem; positive when the triangles face outward.
double volume(const Mesh& mesh) {
  double sum = 0.0;
  for (std::size_t i = 0; i < mesh.triangles.size(); i += 3) {
    const Vec3 a = vec(mesh.vertices[mesh.triangles[i]]), b = vec(mesh.vertices[mesh.triangles[i + 1]]),
               c = vec(mesh.vertices[mesh.triangles[i + 2]]);
    sum += glm::dot(a, glm::cross(b, c)) / 6.0;
  }
  return sum;
}

// Normals have length 1 and point to the side from which the triangles are counterclockwise.
bool normals_fit(const Mesh& mesh) {
  for (std::size_t i = 0; i < mesh.triangles.size(); i += 3) {
    const MeshVertex& v = mesh.vertices[mesh.triangles[i]];
    const Vec3 a = vec(v), b = vec(mesh.vertices[mesh.triangles[i + 1]]),
               c = vec(mesh.vertices[mesh.triangles[i + 2]]);
    const Vec3 normal{v.nx, v.ny, v.nz};
    if (std::abs(glm::length(normal) - 1.0) > 1e-5) return false;
    if (glm::dot(normal, glm::normalize(glm::cross(b - a, c - a))) < 0.9) return false;
  }
  return true;
}

// Area of a regular polygon over that of its circle: what a lathe of so many segments leaves.
double polygon_share(int segments) { return std::sin(turn / segments) / (turn / segments); }

Plan plain_plan() { return synthetic::plan_of(synthetic::draft()); }  // barrel 100, flanges 160, 20.5 wide

Plan skewed_plan() {
  PlanDraft draft = synthetic::draft();
  draft.spool.flange_taper_rad = 0.1;
  draft.spool.barrel_taper_mm = 2.0;
  draft.spool.flange_runout_mm = 0.8;
  return synthetic::plan_of(draft);
}

}  // namespace

TEST_CASE("barrel and flanges are closed, whole and cut") {
  View wedge, axial, both;
  wedge.wedge = Sector{0.4, 1.7};
  axial.axial_cut_rad = 2.5;
  both.wedge = Sector{0.2, 0.9};
  both.axial_cut_rad = 2.5;
  for (const Plan& plan : {plain_plan(), skewed_plan()}) {
    for (const View& view : {View{}, wedge, axial, both}) {
      const SpoolSolid solid = make_spool(plan, view, 64);
      for (const Mesh* mesh : {&solid.barrel, &solid.left_flange, &solid.right_flange}) {
        CHECK(is_closed(*mesh));
        CHECK(normals_fit(*mesh));
      }
    }
  }
}

TEST_CASE("a spool has the volume of its rings") {
  const int segments = 180;
  const SpoolSolid solid = make_spool(plain_plan(), {}, segments);
  const double bore = solid.bore_radius_mm, thickness = solid.flange_thickness_mm;
  CHECK(bore == Approx(0.4 * 50.0));
  CHECK(thickness == Approx(0.04 * 160.0));
  const double share = polygon_share(segments);
  const double flange = std::numbers::pi * (80.0 * 80.0 - bore * bore) * thickness * share;
  CHECK(volume(solid.left_flange) == Approx(flange).epsilon(1e-5));
  CHECK(volume(solid.right_flange) == Approx(flange).epsilon(1e-5));
  CHECK(volume(solid.barrel) == Approx(std::numbers::pi * (50.0 * 50.0 - bore * bore) * 20.5 * share).epsilon(1e-5));
}

TEST_CASE("a wedge takes its share of the volume") {
  View view;
  view.wedge = Sector{0.5, 0.5 + turn / 4.0};
  const SpoolSolid whole = make_spool(plain_plan(), {}, 180), cut = make_spool(plain_plan(), view, 180);
  CHECK(volume(cut.barrel) == Approx(0.75 * volume(whole.barrel)).epsilon(1e-5));
  CHECK(volume(cut.left_flange) == Approx(0.75 * volume(whole.left_flange)).epsilon(1e-5));
  view.axial_cut_rad = 0.5 + turn / 4.0;  // joins the wedge
  CHECK(volume(make_spool(plain_plan(), view, 180).barrel) == Approx(0.25 * volume(whole.barrel)).epsilon(1e-5));
  view.wedge = Sector{0.0, turn};
  CHECK(make_spool(plain_plan(), view).barrel.triangles.empty());
}

TEST_CASE("a conical barrel has the volume of a frustum less the bore") {
  PlanDraft draft = synthetic::draft();
  draft.spool.barrel_taper_mm = 4.0;
  const SpoolSolid solid = make_spool(synthetic::plan_of(draft), {}, 180);
  const double frustum = std::numbers::pi * 20.5 / 3.0 * (50.0 * 50.0 + 50.0 * 52.0 + 52.0 * 52.0);
  const double bore = std::numbers::pi * solid.bore_radius_mm * solid.bore_radius_mm * 20.5;
  CHECK(volume(solid.barrel) == Approx((frustum - bore) * polygon_share(180)).epsilon(1e-5));
}

TEST_CASE("flange faces are where the lay model has them") {
  const Plan plan = skewed_plan();
  for (const double angle : {0.0, 1.0, 3.0, 5.5}) {
    const Section section = Section::of(plan, angle);
    for (const double r : {52.0, 60.0, 79.0}) {
      // The model's lines bound the fiber's centre: half a diameter inward of the face, at right angles to it.
      const double left = section.left().at_axis + section.left().slope * r;
      const double right = section.right().at_axis + section.right().slope * r;
      CHECK(left - left_face_x(plan, r, angle) == Approx(0.5 * std::hypot(1.0, section.left().slope)));
      CHECK(right_face_x(plan, r, angle) - right == Approx(0.5 * std::hypot(1.0, section.right().slope)));
    }
  }
}
