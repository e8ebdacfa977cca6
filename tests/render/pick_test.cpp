// The ids under the pixels against rays through the capsules of the whole fiber.
//
// A pixel is asked where the eight around it show the same turn: at an edge, a ray and the middle of a pixel may rightly
// disagree. No more than a station lies between two pieces' ends, so the same piece's other end counts as the same.
#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include "render/laid_scene.h"
#include "render/offscreen_context.h"
#include "render/scene_renderer.h"

using namespace laywright;

namespace {

struct Tally {
  int rays = 0, mismatches = 0;
};

// True if two nodes are the same end or the ends of one piece.
bool same_piece(std::uint32_t id, std::size_t node) {
  return std::abs(static_cast<long>(id) - static_cast<long>(node)) <= 1;
}

bool is_inside(const FrameTarget& target, int x, int y, std::size_t stations) {
  const std::uint32_t id = target.id_at(x, y);
  for (int dy = -1; dy <= 1; ++dy)
    for (int dx = -1; dx <= 1; ++dx) {
      const std::uint32_t other = target.id_at(x + dx, y + dy);
      if ((id == no_node) != (other == no_node)) return false;
      if (id != no_node &&
          std::abs(static_cast<long>(id) - static_cast<long>(other)) > static_cast<long>(stations) / 8)
        return false;
    }
  return true;
}

Tally compare(const SceneSource& source, const View& view, const FrameTarget& target, int wanted) {
  Tally tally;
  std::uint32_t random = 1;
  const auto next = [&](int below) {
    random = random * 1664525U + 1013904223U;
    return static_cast<int>((random >> 8U) % static_cast<std::uint32_t>(below));
  };
  for (int tries = 0; tries < 20 * wanted && tally.rays < wanted; ++tries) {
    const int x = 1 + next(view.width_px - 2), y = 1 + next(view.height_px - 2);
    const std::uint32_t id = target.id_at(x, y);
    // Flanges and barrel are not fiber: rays pass through them.
    if (id == no_node || !is_inside(target, x, y, source.stations())) continue;
    ++tally.rays;
    const auto hit = pick_fiber(source, view, ray_through(view, x + 0.5, y + 0.5));
    if (hit && same_piece(id, hit->node)) continue;
    ++tally.mismatches;
    UNSCOPED_INFO("at " << x << ", " << y << ": drawn " << id << ", met "
                        << (hit ? std::to_string(hit->node) : std::string("nothing")));
  }
  return tally;
}

Tally tally_of(const SceneSource& source, View view, double drawn_azimuth_off = 0.0) {
  const Scene scene = make_scene(source, view);
  View drawn = view;
  drawn.camera.azimuth_deg += drawn_azimuth_off;
  SceneRenderer renderer;
  const FrameTarget target(view.width_px, view.height_px, 1);
  renderer.load(scene);
  CloseUpSettings near;
  near.most_strand_points = 1'000'000;
  renderer.load(make_close_up(source, scene, drawn, near), scene);
  renderer.draw(target, scene, drawn, sphere_around(source.plan()));
  return compare(source, view, target, 5000);
}

View near_view(const SceneSource& source, double angle) {
  View view;
  view.findings = false;
  view.dimensions = false;
  view.camera.azimuth_deg = 10.0;
  view.camera.elevation_deg = 25.0;
  view.camera.target = in_space(10.0, source.measurements().outer_diameter.middle_mm / 2, angle);
  view.camera.distance_mm = 70.0;
  return view;
}

}  // namespace

TEST_CASE("the id under a pixel is the node that a ray meets: 10,000 rays, none wrong") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const SceneSource source = small_source();
  const View whole = near_view(source, 1.1);
  const Tally first = tally_of(source, whole);
  CHECK(first.rays == 5000);
  CHECK(first.mismatches == 0);

  View cut = near_view(source, 1.0);
  cut.wedge = Sector{0.7, 1.3};
  const Tally second = tally_of(source, cut);
  CHECK(second.rays == 5000);
  CHECK(second.mismatches == 0);

  // A picture from three degrees beside must be found out.
  CHECK(tally_of(source, whole, 3.0).mismatches > 50);
}
