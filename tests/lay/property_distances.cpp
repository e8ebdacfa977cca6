// Over random plans: no turn enters another, the barrel or a flange, and what is said to carry a node is there.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include <catch2/catch.hpp>

#include "penetration_checker.h"
#include "random_plans.h"

using namespace laywright;

namespace {

constexpr double allowed = 1e-6;  // in d, by the model's own rule

// A build with one node moved by (dx, dr).
Build moved(const Build& build, std::size_t node, double dx, double dr) {
  Build result = build;
  const Grid xs = build.nodes.x_grid();
  const Grid rs = build.nodes.r_grid();
  result.nodes = NodeStore(xs, rs);
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    const double x = build.nodes.x(k) + (k == node ? dx : 0.0);
    const double r = build.nodes.r(k) + (k == node ? dr : 0.0);
    result.nodes.push(xs.nearest(x), rs.nearest(r), build.nodes.support(k), build.nodes.rides_up(k));
  }
  return result;
}

std::size_t last_carried_by(const Build& build, Support support) {
  for (std::size_t k = build.nodes.size(); k-- > 0;) {
    if (build.nodes.support(k) == support) return k;
  }
  FAIL("no node is carried so");
  return 0;
}

// Distance of a node from the nearest thing that was there before it, in d; 0: it touches.
double nearest_below(const Plan& plan, const std::vector<referee::Centre>& centres, std::size_t turn) {
  const double d = plan.fiber().diameter_mm;
  const referee::Centre& node = centres[turn];
  double least = 1e9;
  for (std::size_t i = 0; i < turn; ++i) {
    const referee::Centre& c = centres[i];
    const double beside = (std::abs(node.x - c.x) - node.half - c.half) / d;
    const double apart = (std::hypot(node.x - c.x, node.r - c.r) - node.half - c.half) / d;
    // Under a cap the model gives it a vertical side.
    least = std::min(least, node.r < c.r ? beside : apart);
  }
  const Spool& spool = plan.spool();
  const double slope = 0.5 * spool.barrel_taper_mm / spool.inside_width_mm;
  const double height = node.r - 0.5 * spool.barrel_diameter_mm - slope * node.x;
  return std::min(least, (height / std::hypot(1.0, slope) - node.half) / d);
}

// Largest gap under nodes that are carried by turns or barrel.
double worst_gap_under_carried(const Plan& plan, const Build& build) {
  double worst = 0.0;
  for (int station = 0; station < build.stations_per_turn; ++station) {
    const auto centres = referee::centres_at(build, station);
    for (std::size_t turn = 0; turn < centres.size(); ++turn) {
      const Support support = build.nodes.support(centres[turn].node);
      if (support == Support::none || support == Support::flange) continue;
      worst = std::max(worst, nearest_below(plan, centres, turn));
    }
  }
  return worst;
}

void check_distances(std::uint64_t seed, const random_plans::Wanted& wanted) {
  const PlanDraft draft = random_plans::draft(seed, wanted);
  const Plan plan = random_plans::plan_of(draft);
  const Build build = random_plans::laid(plan);
  INFO("seed " << seed << ": " << random_plans::in_words(draft));
  const auto clearance = referee::clearance(plan, build);
  INFO(clearance.text());
  CHECK(clearance.least >= -allowed);
  const auto overhangs = referee::clearance_of_overhangs(build, draft.fiber.diameter_mm);
  INFO(overhangs.text());
  CHECK(overhangs.least >= -allowed);
  CHECK(worst_gap_under_carried(plan, build) < allowed);
}

}  // namespace

TEST_CASE("no turn of a random plan enters another, the barrel or a flange") {
  std::vector<std::uint64_t> seeds(60);
  std::iota(seeds.begin(), seeds.end(), 1U);
  seeds.push_back(1064);  // of a thousand more, one that slipped under an overhang on a tapered barrel
  for (const std::uint64_t seed : seeds) check_distances(seed, {});
}

TEST_CASE("nor where the fiber's diameter scatters") {
  random_plans::Wanted wanted;
  wanted.diameter_scatter = true;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) check_distances(seed, wanted);
}

TEST_CASE("the checker sees a node that is 1e-5 d out of place") {
  PlanDraft draft = random_plans::draft(7, {false, false, false, 80.0});
  draft.fiber.friction = 0.5;
  draft.spool.flange_taper_rad = 0.05;
  const double d = draft.fiber.diameter_mm;
  draft.traverse.pitch_mm = 1.05 * d;
  const Plan plan = random_plans::plan_of(draft);
  const Build build = random_plans::laid(plan);
  REQUIRE(referee::clearance(plan, build).least >= -allowed);
  const double step = 1e-5 * d;

  SECTION("into a turn below") {
    const std::size_t node = last_carried_by(build, Support::turn);
    const auto found = referee::clearance(plan, moved(build, node, 0.0, -2.0 * step));
    CHECK(found.least < -allowed);
    CHECK(found.of == "two turns");
    CHECK(std::max(found.node, found.other) == node);
  }
  SECTION("into the barrel") {
    const std::size_t node = last_carried_by(build, Support::barrel);
    const auto found = referee::clearance(plan, moved(build, node, 0.0, -step));
    CHECK(found.least == Approx(-1e-5).epsilon(0.01));
    CHECK(found.of == "the barrel");
    CHECK(found.node == node);
  }
  SECTION("into a flange") {
    const std::size_t node = 0;
    Build first_turn = build;
    first_turn.nodes.truncate(static_cast<std::size_t>(build.stations_per_turn));
    for (const double side : {-1.0, 1.0}) {
      // Past the face by 1e-5 d, wherever the node lies.
      const double r = build.nodes.r(node);
      const double slope = std::tan(0.05);
      const double off_axis = (r - 0.5 * draft.spool.barrel_diameter_mm) * slope;
      const double face = side < 0.0 ? -off_axis : draft.spool.inside_width_mm + off_axis;
      const double x = face - side * (0.5 * d - step) * std::hypot(1.0, slope);
      const auto found = referee::clearance(plan, moved(first_turn, node, x - build.nodes.x(node), 0.0));
      CHECK(found.least < -0.99e-5);
      CHECK(found.of == (side < 0.0 ? "the left flange" : "the right flange"));
    }
  }
  SECTION("beside an overhang") {
    const std::size_t node = build.nodes.size() - 1;
    const auto turn = static_cast<std::size_t>(build.stations_per_turn);
    const std::size_t before = node - turn;
    const double dx = build.nodes.x(before) + d - step - build.nodes.x(node);
    const double dr = build.nodes.r(before) - 1.5 * d - build.nodes.r(node);
    const auto found = referee::clearance_of_overhangs(moved(build, node, dx, dr), d);
    CHECK(found.least < -0.99e-5);
  }
}
