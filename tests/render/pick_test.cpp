// The ids under the pixels against rays through the capsules of the whole fiber.
//
// In the first test a pixel is asked where the eight around it show the same turn: at an edge, a ray and the middle of a
// pixel may rightly disagree. No more than a station lies between two pieces' ends, so the same piece's other end counts as the same.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include "paint/offscreen_context.h"
#include "render/laid_scene.h"
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

// At an edge the middle of a pixel and a ray may rightly disagree, but only there: what is drawn must be met by one of the
// rays through the pixel's surroundings.
struct EdgeTally {
  int pixels = 0, edges = 0, wrong = 0;
  std::string first_wrong;
};
// That reach a pixel far, and half a column of the height field, which fills the chinks between round fibers.
EdgeTally compare_with_edges(const SceneSource& source, const View& view, const FrameTarget& target) {
  const double tolerance_px = 1.0 + 0.5 * source.shells().grid().column_mm / mm_per_px(view);
  EdgeTally tally;
  for (int y = 2; y < view.height_px - 2; y += 3) {
    for (int x = 2; x < view.width_px - 2; x += 3) {
      const std::uint32_t id = target.id_at(x, y);
      if (id == no_node) continue;  // flanges and barrel are not fiber: rays pass through them
      ++tally.pixels;
      bool first = true, found = false;
      for (const double dy : {0.0, -tolerance_px, tolerance_px}) {
        for (const double dx : {0.0, -tolerance_px, tolerance_px}) {
          const auto hit = pick_fiber(source, view, ray_through(view, x + 0.5 + dx, y + 0.5 + dy));
          found = hit && same_piece(id, hit->node);
          if (found) break;
          tally.edges += first ? 1 : 0;
          first = false;
        }
        if (found) break;
      }
      if (found) continue;
      ++tally.wrong;
      const auto hit = pick_fiber(source, view, ray_through(view, x + 0.5, y + 0.5));
      if (tally.wrong == 1)
        tally.first_wrong = "at " + std::to_string(x) + ", " + std::to_string(y) + ": drawn " + std::to_string(id) +
                            ", met " + (hit ? std::to_string(hit->node) : std::string("nothing"));
    }
  }
  return tally;
}

TEST_CASE("at edges, a pixel shows one of the neighbours that meet there, and nothing else") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const SceneSource source = small_source();
  for (const bool is_cut : {false, true}) {
    View view = near_view(source, 1.1);
    if (is_cut) view.wedge = Sector{0.7, 1.3};
    const Scene scene = make_scene(source, view);
    SceneRenderer renderer;
    const FrameTarget target(view.width_px, view.height_px, 1);
    renderer.load(scene);
    renderer.load(make_close_up(source, scene, view), scene);
    renderer.draw(target, scene, view, sphere_around(source.plan()));
    const EdgeTally tally = compare_with_edges(source, view, target);
    INFO(tally.pixels << " pixels, " << tally.edges << " at edges; first wrong " << tally.first_wrong);
    CHECK(tally.pixels > 2'000);
    CHECK(tally.edges < tally.pixels / 20);  // little else than edges disagrees with its own ray
    CHECK(tally.wrong == 0);
    View beside = view;
    beside.camera.azimuth_deg += 3.0;
    CHECK(compare_with_edges(source, beside, target).wrong > tally.pixels / 10);
  }
}

TEST_CASE("from afar, a pixel names fiber that runs through it") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const SceneSource source = small_source(0.3, 300.0);
  View view;
  view.findings = false;
  view.dimensions = false;
  view.width_px = 500;
  view.height_px = 400;
  view.camera = fit_camera(source.plan(), view);
  const Scene scene = make_scene(source, view);
  SceneRenderer renderer;
  const FrameTarget target(view.width_px, view.height_px, 1);
  renderer.load(scene);
  renderer.draw(target, scene, view, sphere_around(source.plan()));
  const NodeStore& nodes = source.build().nodes;
  const auto projected = [&](std::size_t node) {
    const double angle = 2.0 * 3.14159265358979 * static_cast<double>(node % source.stations()) /
                         static_cast<double>(source.stations());
    return *in_picture(view, in_space(nodes.x(node), nodes.r(node), angle));
  };
  // Off the fiber's centre line by no more than half a fiber, a column of the height field, and a pixel.
  const double fiber_px = source.d() / mm_per_px(view);
  const double most = 0.5 * fiber_px + scene.shell.grid.column_mm / mm_per_px(view) + 1.0;
  const auto farthest = [&](int shift_px) {
    int fiber = 0, off = 0;
    for (int y = 1; y < view.height_px; y += 3) {
      for (int x = 1; x + 40 < view.width_px; x += 3) {
        const std::uint32_t id = target.id_at(x + shift_px, y);
        if (id == no_node || id == 0 || id + 1 >= nodes.size()) continue;
        ++fiber;
        const glm::dvec2 here(x + 0.5, y + 0.5);
        double least = 1e9;
        for (const std::size_t k : {std::size_t{id} - 1, std::size_t{id}}) {
          const glm::dvec2 a = projected(k), ab = projected(k + 1) - a;
          const double share = std::clamp(glm::dot(here - a, ab) / std::max(1e-12, glm::dot(ab, ab)), 0.0, 1.0);
          least = std::min(least, glm::length(here - a - share * ab));
        }
        off += least > most ? 1 : 0;
      }
    }
    REQUIRE(fiber > 500);
    return static_cast<double>(off) / fiber;
  };
  CHECK(farthest(0) < 0.005);
  CHECK(farthest(6) > 0.5);
}

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
