// The scatter of the fiber's diameter: the draw itself, the geometry of circles that are not alike, and what it does to a wind.
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "lay/fiber_diameter.h"
#include "lay/settle.h"
#include "plans.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

PlanDraft scattered(double sigma_d, double length_mm) {
  PlanDraft draft = plain_draft();
  draft.fiber.diameter_scatter_mm = sigma_d * draft.fiber.diameter_mm;
  draft.fiber.scatter_length_mm = length_mm;
  return draft;
}

struct Moments {
  double mean = 0.0, sigma = 0.0, correlation = 0.0;  // the last over one scatter length
};

// Of many draws, halves over the mean half less 1.
Moments moments_of(const PlanDraft& draft, int stations) {
  const Plan plan = sound(draft);
  const double radius = 0.5 * draft.spool.barrel_diameter_mm;
  const double step = 2.0 * std::numbers::pi * radius / stations;
  const auto apart = static_cast<std::size_t>(std::lround(draft.fiber.scatter_length_mm / step));
  const double half = 0.5 * draft.fiber.diameter_mm;
  double sum = 0.0, squares = 0.0, products = 0.0;
  constexpr int draws = 4000;
  for (std::uint64_t seed = 1; seed <= draws; ++seed) {
    FiberDiameter diameters(plan, stations, seed);
    diameters.extend_to(apart, radius);
    const double here = static_cast<double>(diameters.half_mm(0)) / half - 1.0;
    const double there = static_cast<double>(diameters.half_mm(apart)) / half - 1.0;
    sum += here;
    squares += here * here;
    products += here * there;
  }
  Moments moments;
  moments.mean = sum / draws;
  moments.sigma = std::sqrt(squares / draws);
  moments.correlation = products / squares;
  return moments;
}

// Fiber of d 1 on a flat barrel at r 10 between faces at 0 and 20, half diameters up to .09 more or less.
Section uneven() {
  Section section(1.0, {10.5, 0.0}, {0.5, 0.0}, {19.5, 0.0});
  section.scatter(0.09);
  return section;
}

void insert(Section& section, float half, double x, double r) {
  section.admit(half);
  section.insert(x, r, 0);
}

Resting rested(const Section& section, Resting node, double friction = 0.0) {
  for (int i = 0; i < 4000; ++i) settle(section, node, node.x, node.r - 0.01, FrictionCone(friction));
  return node;
}

double apart(const Resting& node, double x, double r) { return std::hypot(node.x - x, node.r - r); }

}  // namespace

TEST_CASE("the diameter keeps to its sigma, and its departure fades by e over the scatter length") {
  // 4,000 draws: a standard error of 1.6 % of a mean, 1.1 % of a sigma, .015 of a correlation.
  for (const double length : {200.0, 5000.0}) {
    CAPTURE(length);
    const Moments moments = moments_of(scattered(0.02, length), 96);
    CHECK(std::abs(moments.mean) < 0.05 * 0.02);
    CHECK(moments.sigma == Approx(0.02).epsilon(0.05));
    CHECK(moments.correlation == Approx(std::exp(-1.0)).margin(0.05));
  }
}

TEST_CASE("the same seed draws the same diameter whatever the number of stations") {
  const Plan plan = sound(scattered(0.02, 300.0));
  FiberDiameter coarse(plan, 64, 5), fine(plan, 256, 5), other(plan, 64, 6);
  for (FiberDiameter* each : {&coarse, &fine, &other}) each->extend_to(4000, 75.0);
  double differs = 0.0;
  for (std::size_t k = 0; k < 1000; ++k) {
    CHECK(coarse.half_mm(k) == Approx(fine.half_mm(4 * k)).epsilon(1e-6));
    differs = std::max(differs, std::abs(static_cast<double>(coarse.half_mm(k) - other.half_mm(k))));
  }
  CHECK(differs > 0.001);
}

TEST_CASE("a turn between two of other diameters touches both") {
  Section section = uneven();
  insert(section, 0.55F, 10.0, 10.55);
  insert(section, 0.45F, 11.02, 10.45);
  section.admit(0.52F);
  const Resting node = rested(section, set_down(section, 10.4));
  CHECK(node.in_valley());
  // By the sides of a triangle.
  CHECK(apart(node, 10.0, 10.55) == Approx(0.55 + 0.52).epsilon(1e-7));
  CHECK(apart(node, 11.02, 10.45) == Approx(0.45 + 0.52).epsilon(1e-7));
  CHECK(node.r > 11.0);
}

TEST_CASE("a turn that slides down beside a thin one comes to rest on the thicker one below it") {
  Section section = uneven();
  insert(section, 0.58F, 10.0, 10.58);
  insert(section, 0.42F, 10.0, 11.58);
  section.admit(0.42F);
  const double x = 10.84;
  for (const std::int32_t i : {section.first(), section.last()}) {
    if (section[i].r < 11.0) continue;
    Resting node{x, 11.5, {Contact::Kind::right_side, i}, {Contact::Kind::right_side, i}};
    settle(section, node, x, 10.9, FrictionCone(0.0));
    CHECK(apart(node, 10.0, 10.58) == Approx(1.0).epsilon(1e-7));
    CHECK(apart(node, 10.0, 11.58) >= 0.84 - 1e-9);
  }
}

TEST_CASE("barrel and flanges keep half of the fiber that passes") {
  Section section = uneven();
  for (const float half : {0.42F, 0.58F}) {
    section.admit(half);
    const Resting left = set_down(section, 0.0);
    CHECK(left.x == Approx(half));
    CHECK(left.r == Approx(10.0 + half));
    CHECK(set_down(section, 20.0).x == Approx(20.0 - half));
  }
}

// The path through circles that are not alike agrees with the one through equal circles as they become so.
TEST_CASE("a scatter of next to nothing changes next to nothing") {
  PlanDraft draft = scattered(0.0, 1000.0);
  draft.spool.inside_width_mm = 10.0;
  draft.wind.turns = 120.0;
  const Build even = laid(draft);
  draft.fiber.diameter_scatter_mm = 1e-9;
  const Build uneven_build = laid(draft);
  REQUIRE(even.nodes.size() == uneven_build.nodes.size());
  CHECK(even.hash() != uneven_build.hash());
  double worst = 0.0;
  for (std::size_t k = 0; k < even.nodes.size(); ++k) {
    worst = std::max(
        worst, std::hypot(even.nodes.x(k) - uneven_build.nodes.x(k), even.nodes.r(k) - uneven_build.nodes.r(k)));
  }
  CHECK(worst < 0.02 * draft.fiber.diameter_mm);
}

// Ten micrometres to either side of 245 are all the slack of a pitch of 1.04 d (arithmetic): where the fiber is thicker than
// its pitch for a hundred turns, the next turn finds no room. The guide is near, so that turns do not lead the fiber on ahead
// of it instead.
TEST_CASE("fiber that grows thicker than its pitch rides up on itself") {
  PlanDraft draft = scattered(0.0, 100'000.0);
  draft.traverse.pitch_mm = 1.02 * draft.fiber.diameter_mm;
  draft.traverse.free_length_mm = 5.0;
  draft.wind.turns = 300.0;
  const auto ride_ups = [](const PlanDraft& plan, std::uint64_t seed) {
    const Build build = laid(plan, {seed, 1.0});
    std::size_t count = 0;
    for (std::size_t k = 0; k < build.nodes.size(); ++k) count += build.nodes.rides_up(k) ? 1U : 0U;
    return count;
  };
  CHECK(ride_ups(draft, 1) == 0);
  draft.fiber.diameter_scatter_mm = 0.03 * draft.fiber.diameter_mm;
  std::size_t with_scatter = 0;
  for (std::uint64_t seed = 1; seed <= 8; ++seed) with_scatter += ride_ups(draft, seed);
  CHECK(with_scatter > 0);
  draft.traverse.pitch_mm = 1.1 * draft.fiber.diameter_mm;
  CHECK(ride_ups(draft, 1) == 0);
}
