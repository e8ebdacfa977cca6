// How densely a spool can fill: no denser than hexagonal packing, and no looser than fiber that is held where it
// lands.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <catch2/catch.hpp>

#include "penetration_checker.h"
#include "random_plans.h"

using namespace laywright;

namespace {

constexpr double hexagonal = 0.906900;  // pi / sqrt(12)

// Fiber volume over the volume between barrel and mean outer surface, which is taken here as the highest fiber above
// each of many places along the width.
double fill_factor(const Plan& plan, const Build& build) {
  const double d = plan.fiber().diameter_mm;
  const double width = plan.spool().inside_width_mm;
  const double barrel = 0.5 * plan.spool().barrel_diameter_mm;
  const auto columns = static_cast<std::size_t>(std::ceil(20.0 * width / d));
  const double step = width / static_cast<double>(columns);
  double volume = 0.0;  // per rad, between barrel and surface
  double fiber = 0.0;
  for (int station = 0; station < build.stations_per_turn; ++station) {
    std::vector<double> surface(columns, barrel);
    for (const referee::Centre& c : referee::centres_at(build, station)) {
      fiber += 0.25 * std::numbers::pi * d * d * c.r;
      const double first = std::ceil((c.x - 0.5 * d) / step - 0.5);
      for (double i = std::max(0.0, first); i < static_cast<double>(columns) && (i + 0.5) * step < c.x + 0.5 * d;
           i += 1.0) {
        const double dx = (i + 0.5) * step - c.x;
        double& r = surface[static_cast<std::size_t>(i)];
        r = std::max(r, c.r + std::sqrt(std::max(0.0, 0.25 * d * d - dx * dx)));
      }
    }
    for (const double r : surface) volume += 0.5 * (r * r - barrel * barrel) * step;
  }
  return fiber / volume;
}

PlanDraft ordered(double friction, double pitch_d) {
  PlanDraft draft;
  draft.title = "twelve layers of 24 turns";
  draft.fiber.diameter_mm = 0.5;
  draft.fiber.friction = friction;
  draft.spool.barrel_diameter_mm = 60.0;
  draft.spool.flange_diameter_mm = 100.0;
  draft.spool.inside_width_mm = 12.3;
  draft.traverse.pitch_mm = pitch_d * 0.5;
  draft.traverse.left_stop_mm = 0.25;
  draft.traverse.right_stop_mm = 0.25;
  draft.traverse.free_length_mm = 40.0;
  draft.wind.turns = 288.0;
  return draft;
}

// Oler's inequality: points no closer than 1, in a convex set of area A and perimeter P, are at most
// 2 A / sqrt(3) + P / 2 + 1 (N. Oler, Acta Mathematica 105, 1961; from memory).
double most_points(double width, double height) {
  return 2.0 / std::sqrt(3.0) * width * height + (width + height) + 1.0;
}

}  // namespace

TEST_CASE("no section holds more turns than fit into it") {
  for (std::uint64_t seed = 301; seed <= 320; ++seed) {
    const PlanDraft draft = random_plans::draft(seed, {true, false, true, 200.0});
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    const Build build = random_plans::laid(random_plans::plan_of(draft), seed);
    const double d = draft.fiber.diameter_mm;
    for (int station = 0; station < build.stations_per_turn; ++station) {
      const auto centres = referee::centres_at(build, station);
      const auto [left, right] = std::minmax_element(centres.begin(), centres.end(),
                                                     [](const auto& a, const auto& b) { return a.x < b.x; });
      const auto [low, high] = std::minmax_element(centres.begin(), centres.end(),
                                                   [](const auto& a, const auto& b) { return a.r < b.r; });
      const double most = most_points((right->x - left->x) / d, (high->r - low->r) / d);
      REQUIRE(static_cast<double>(centres.size()) <= most);
    }
  }
}

TEST_CASE("a spool fills between fiber held where it lands and hexagonal packing") {
  for (const double pitch_d : {1.02, 1.06, 1.15}) {
    const Plan held_plan = random_plans::plan_of(ordered(Fiber::held, pitch_d));
    const double held = fill_factor(held_plan, random_plans::laid(held_plan));
    // Held fiber still nests where it happens to: far above discs that stick where they land, .358.
    CHECK(held > 0.5);
    for (const double friction : {0.0, 0.3, 0.5, 0.8}) {
      INFO("friction " << friction << ", pitch " << pitch_d << " d, held " << held);
      const Plan plan = random_plans::plan_of(ordered(friction, pitch_d));
      const double fill = fill_factor(plan, random_plans::laid(plan));
      CHECK(fill < hexagonal);
      // At .8 nearly all of it holds, and what slips does so for better or worse.
      CHECK(fill > held - 0.005);
    }
  }
}
