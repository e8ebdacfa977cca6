// What a ray meets: against every capsule of the build.
#include <catch2/catch.hpp>

#include <glm/geometric.hpp>

#include <numbers>

#include "scenes.h"

using namespace laywright;
using scenes::Draw;
using scenes::random_source;

namespace {

Vec3 place_of(const SceneSource& source, std::size_t node) {
  const NodeStore& nodes = source.build().nodes;
  const double share = static_cast<double>(node % source.stations()) / static_cast<double>(source.stations());
  return in_space(nodes.x(node), nodes.r(node), 2.0 * std::numbers::pi * share);
}

// Where a ray is inside of what cuts leave, in steps: slow and plain. Removed sectors are cut by planes, so the first
// place is found among the crossings with the planes and the entry itself.
std::optional<double> first_left(const View& view, const Ray& ray, double enter, double leave) {
  const auto removed = removed_sectors(view);
  std::vector<double> places{enter};
  for (const Sector& sector : removed) {
    for (const double angle : {sector.from, sector.to}) {
      const Vec3 normal{0.0, -std::sin(angle), std::cos(angle)};
      places.push_back(-glm::dot(ray.origin, normal) / glm::dot(ray.direction, normal));
    }
  }
  for (const double x : {view.x_from_mm.value_or(NAN), view.x_to_mm.value_or(NAN)})
    places.push_back((x - ray.origin.x) / ray.direction.x);
  std::sort(places.begin(), places.end(), [](double a, double b) { return std::isnan(b) ? !std::isnan(a) : a < b; });
  for (const double t : places) {
    if (!(t >= enter && t <= leave)) continue;
    const Vec3 past = ray.origin + (t + 1e-9) * ray.direction;
    if (is_removed(removed, angle_of(past))) continue;
    if (past.x < view.x_from_mm.value_or(-HUGE_VAL) || past.x > view.x_to_mm.value_or(HUGE_VAL)) continue;
    return t;
  }
  return std::nullopt;
}

struct Found {
  double distance = HUGE_VAL, second = HUGE_VAL;  // of the nearest piece, and of the next that is not its neighbour
  std::size_t piece = 0;
};

Found search(const SceneSource& source, const View& view, const Ray& ray) {
  Found found;
  const VisibleFiber fiber = visible_fiber(source, view);
  for (std::size_t k = fiber.first; k + 1 < fiber.end; ++k) {
    double leave = 0.0;
    const auto enter = ray_capsule(ray, place_of(source, k), place_of(source, k + 1), 0.5 * source.d(), &leave);
    if (!enter) continue;
    const auto distance = first_left(view, ray, *enter, leave);
    if (distance && *distance < found.distance) found = {*distance, found.distance, k};
  }
  return found;
}

// Towards the wind from all around.
Ray draw_ray(const SceneSource& source, Draw& draw) {
  const double width = source.plan().spool().inside_width_mm, rim = 0.5 * source.plan().spool().flange_diameter_mm;
  const Vec3 from =
      in_space(draw.between(-width, 2.0 * width), draw.between(1.0, 3.0) * rim, draw.between(0.0, 6.28));
  const Vec3 to = in_space(draw.between(0.0, width), draw.between(0.0, rim), draw.between(0.0, 6.28));
  return {from, glm::normalize(to - from)};
}

std::size_t mismatches(const SceneSource& source, const View& view, int rays, Draw& draw, std::size_t& hits) {
  std::size_t wrong = 0;
  for (int i = 0; i < rays; ++i) {
    const Ray ray = draw_ray(source, draw);
    const Found expected = search(source, view, ray);
    const auto hit = pick_fiber(source, view, ray);
    if (hit.has_value() != std::isfinite(expected.distance)) {
      ++wrong;
    } else if (hit) {
      ++hits;
      const double off = std::abs(hit->distance - expected.distance);
      // Pieces that meet in a node are hit at the same distance there.
      if (off > 1e-7 * source.d() || (hit->piece != expected.piece && off > 1e-10)) ++wrong;
    }
  }
  return wrong;
}

}  // namespace

TEST_CASE("a ray and a capsule, where the answer is known") {
  const Ray ray{{0.0, 0.0, 10.0}, {0.0, 0.0, -1.0}};
  double leave = 0.0;
  // Straight through the middle of a lying capsule.
  CHECK(*ray_capsule(ray, {-1.0, 0.0, 0.0}, {1.0, 0.0, 0.0}, 0.5, &leave) == Approx(9.5));
  CHECK(leave == Approx(10.5));
  // Beside its axis by 0.3: half the chord is 0.4.
  CHECK(*ray_capsule(ray, {-1.0, 0.3, 0.0}, {1.0, 0.3, 0.0}, 0.5, &leave) == Approx(9.6));
  // Through the round end: its middle is 0.3 away.
  CHECK(*ray_capsule(ray, {0.3, 0.0, 0.0}, {2.0, 0.0, 0.0}, 0.5) == Approx(9.6));
  // Along its axis: from the tip of one end to that of the other.
  CHECK(*ray_capsule(ray, {0.0, 0.0, 1.0}, {0.0, 0.0, -1.0}, 0.5, &leave) == Approx(8.5));
  CHECK(leave == Approx(11.5));
  CHECK_FALSE(ray_capsule(ray, {-1.0, 0.6, 0.0}, {1.0, 0.6, 0.0}, 0.5));
  CHECK_FALSE(ray_capsule(ray, {-1.0, 0.0, 20.0}, {1.0, 0.0, 20.0}, 0.5));    // behind
  CHECK(*ray_capsule(ray, {-1.0, 0.0, 10.0}, {1.0, 0.0, 10.0}, 0.5) == 0.0);  // around the origin
  // A point.
  CHECK(*ray_capsule(ray, {0.0, 0.0, 0.0}, {0.0, 0.0, 0.0}, 0.5) == Approx(9.5));
}

TEST_CASE("a ray and capsules at random: where it enters, the axis is a radius away") {
  Draw draw(4);
  const auto point = [&] { return Vec3{draw.between(-2.0, 2.0), draw.between(-2.0, 2.0), draw.between(-2.0, 2.0)}; };
  const auto distance = [](const Vec3& p, const Vec3& a, const Vec3& b) {
    const double share = std::clamp(glm::dot(p - a, b - a) / glm::dot(b - a, b - a), 0.0, 1.0);
    return glm::length(p - (a + share * (b - a)));
  };
  int hits = 0;
  for (int i = 0; i < 5000; ++i) {
    const Vec3 a = point(), b = point(), from = 5.0 * point();
    const Ray ray{from, glm::normalize(point() - from)};
    const double radius = draw.between(0.05, 1.0);
    const auto enter = ray_capsule(ray, a, b, radius);
    double least = HUGE_VAL;
    for (double t = 0.0; t < 30.0; t += 0.05) least = std::min(least, distance(from + t * ray.direction, a, b));
    if (enter) {
      ++hits;
      if (*enter > 0.0) REQUIRE(distance(from + *enter * ray.direction, a, b) == Approx(radius).margin(1e-9));
    } else {
      REQUIRE(least >= radius);
    }
  }
  CHECK(hits > 500);
}

TEST_CASE("a pick meets what a search through all capsules meets, over 10^4 rays") {
  std::size_t wrong = 0, hits = 0;
  Draw draw(2);
  for (std::uint64_t seed = 200; seed < 210; ++seed)
    wrong += mismatches(random_source(seed, 60.0), {}, 1000, draw, hits);
  CHECK(wrong == 0);
  CHECK(hits > 5000);
}

TEST_CASE("a pick sees through what is cut, peeled or not yet laid") {
  std::size_t wrong = 0, hits = 0;
  Draw draw(3);
  for (std::uint64_t seed = 210; seed < 222; ++seed) {
    const SceneSource source = random_source(seed, 60.0);
    View view;
    const double width = source.plan().spool().inside_width_mm;
    if (draw.below(3) > 0) view.wedge = Sector{draw.between(0.0, 6.0), draw.between(6.0, 12.0)};
    if (draw.below(3) == 0) view.axial_cut_rad = draw.between(0.0, 6.0);
    if (draw.below(3) == 0) view.x_from_mm = draw.between(0.0, 0.5) * width;
    if (draw.below(3) == 0) view.x_to_mm = draw.between(0.5, 1.0) * width;
    view.first_layer = 1 + static_cast<int>(draw.below(2));
    if (draw.below(2) == 0) view.until_turn = draw.between(0.3, 1.0) * source.build().turns;
    wrong += mismatches(source, view, 400, draw, hits);
  }
  CHECK(wrong == 0);
  CHECK(hits > 1000);
}

TEST_CASE("facts of a node against a search") {
  for (std::uint64_t seed = 230; seed < 236; ++seed) {
    const SceneSource source = random_source(seed);
    const Build& build = source.build();
    Draw draw(seed);
    for (int i = 0; i < 50; ++i) {
      const std::size_t node = draw.below(build.nodes.size());
      const NodeFacts facts = facts_of(source, node);
      CHECK(facts.layer == static_cast<int>(build.stroke_of(node)) + 1);
      CHECK(facts.direction == build.strokes[build.stroke_of(node)].direction);
      CHECK(facts.turn == Approx(static_cast<double>(node) / build.stations_per_turn));
      CHECK(facts.length_mm == source.line().at(node));
      std::optional<std::size_t> below, above;
      for (std::size_t k = node % source.stations(); k < build.nodes.size(); k += source.stations()) {
        if (k == node || std::abs(build.nodes.x(k) - build.nodes.x(node)) > 0.5 * source.d()) continue;
        if (k < node) below = k;
        if (k > node && !above) above = k;
      }
      CHECK(facts.below == below);
      CHECK(facts.above == above);
      // What the lay model says: a later one lies higher.
      if (below) CHECK(build.nodes.r(*below) < facts.r_mm);
      if (above) CHECK(build.nodes.r(*above) > facts.r_mm);
      CHECK(facts.before.has_value() == (node >= source.stations()));
      if (facts.left) CHECK(build.nodes.x(*facts.left) <= facts.x_mm);
      if (facts.right) CHECK(build.nodes.x(*facts.right) > facts.x_mm);
    }
  }
}
