#include <cmath>
#include <numbers>
#include <vector>

#include "plans.h"

using namespace laywright;
using testing::laid;
using testing::plain_draft;

namespace {

// One turn per pitch with the guide at the fiber: what a first layer is made of.
PlanDraft helix(double diameter_of_centres, double pitch, double turns) {
  PlanDraft draft = plain_draft();
  draft.fiber.friction = Fiber::held;
  draft.spool.barrel_diameter_mm = diameter_of_centres - draft.fiber.diameter_mm;
  draft.spool.flange_diameter_mm = 2.0 * diameter_of_centres;
  draft.spool.inside_width_mm = pitch * turns + 2.0;
  draft.traverse.pitch_mm = pitch;
  draft.traverse.left_stop_mm = 0.5;
  draft.traverse.right_stop_mm = 0.5;
  draft.traverse.free_length_mm = 0.0;
  draft.wind.turns = turns;
  return draft;
}

}  // namespace

// L = N sqrt((pi D)^2 + P^2): helix length, Dr Math 55156.
TEST_CASE("a helix has the length of its closed form") {
  CHECK(laid(helix(20.0, 5.0, 1.0)).length_mm == Approx(63.0305).epsilon(1e-6));
  CHECK(laid(helix(75.0, 64.0, 1.0)).length_mm == Approx(244.1568).epsilon(1e-6));
  const double circle = std::numbers::pi * 150.0;
  const double excess = laid(helix(150.0, 0.30, 50.0)).length_mm / 50.0 - circle;
  CHECK(excess == Approx(9.55e-5).epsilon(1e-3));
  CHECK(laid(helix(150.0, 0.30, 50.0)).length_mm == Approx(50.0 * std::hypot(circle, 0.30)).epsilon(1e-9));
}

// 1 + floor((W - d) / p) turns with a gap of p - d: computed from the geometry.
TEST_CASE("a first layer has 1 + floor((W - d) / p) turns in its section, p - d apart") {
  for (const double pitch : {0.26, 0.30, 0.55}) {
    PlanDraft draft = plain_draft();
    draft.spool.inside_width_mm = 20.0;
    draft.traverse.pitch_mm = pitch;
    draft.traverse.free_length_mm = 0.0;
    draft.wind.turns = std::ceil((20.0 - 0.25) / pitch) + 3.0;
    const Build build = laid(draft);
    const std::size_t end = build.end_of(0);
    const auto stations = static_cast<std::size_t>(build.stations_per_turn);
    std::vector<double> x;
    for (std::size_t k = 0; k < end; k += stations) x.push_back(build.nodes.x(k));
    CHECK(x.size() == static_cast<std::size_t>(1.0 + std::floor((20.0 - 0.25) / pitch)));
    for (std::size_t i = 1; i < x.size(); ++i) CHECK(x[i] - x[i - 1] - 0.25 == Approx(pitch - 0.25).epsilon(1e-6));
  }
}

TEST_CASE("a dwell of n turns lays n turns at the stop") {
  for (const double dwell : {1.0, 2.0, 5.0}) {
    PlanDraft draft = plain_draft();
    draft.spool.inside_width_mm = 20.0;
    draft.traverse.right_stop_mm = 3.0;
    draft.traverse.free_length_mm = 0.0;
    draft.traverse.reversal = {ReversalKind::dwell, dwell, 0.0, 0.0};
    draft.fiber.friction = Fiber::held;
    draft.wind.turns = 90.0;
    const Build build = laid(draft);
    const std::size_t end = build.end_of(0);
    std::size_t at_stop = 0;
    for (std::size_t k = 0; k < end; ++k) at_stop += std::abs(build.nodes.x(k) - 17.0) < 1e-6 ? 1U : 0U;
    CHECK(static_cast<double>(at_stop) / build.stations_per_turn == Approx(dwell).margin(0.02));
  }
}

TEST_CASE("the wind ends at the plan's length, turns or diameter") {
  PlanDraft draft = plain_draft();
  draft.wind.turns.reset();
  draft.wind.length_mm = 123456.7;
  const Build by_length = laid(draft);
  CHECK(by_length.stopped_by == StopReason::length);
  CHECK(by_length.length_mm == 123456.7);
  CHECK(by_length.turns == Approx(123456.7 / std::hypot(std::numbers::pi * 150.25, 0.26)).epsilon(1e-6));

  draft.wind.length_mm.reset();
  draft.wind.turns = 77.25;
  CHECK(laid(draft).turns == 77.25);
  CHECK(laid(draft).stopped_by == StopReason::turns);

  draft.wind.turns.reset();
  draft.wind.diameter_mm = 151.2;
  const Build by_diameter = laid(draft);
  CHECK(by_diameter.stopped_by == StopReason::diameter);
  // With the first turn that reaches it, by its mean.
  const auto turn = static_cast<std::size_t>(by_diameter.stations_per_turn);
  const auto diameter_of_turn = [&](std::size_t end) {
    double sum = 0.0;
    for (std::size_t k = end - turn; k < end; ++k) sum += by_diameter.nodes.r(k);
    return 2.0 * sum / static_cast<double>(turn) + usual::d;
  };
  const std::size_t end = by_diameter.nodes.size();
  CHECK(diameter_of_turn(end) >= 151.2);
  CHECK(diameter_of_turn(end - turn) < 151.2);
}

TEST_CASE("the wind stops before the rim is passed") {
  PlanDraft draft = plain_draft();
  draft.spool.flange_diameter_mm = 152.0;
  draft.spool.inside_width_mm = 10.0;
  draft.wind.turns = 1000.0;
  const Build build = laid(draft);
  CHECK(build.stopped_by == StopReason::rim);
  CHECK(build.turns < 1000.0);
  for (std::size_t k = 0; k < build.nodes.size(); ++k) REQUIRE(build.nodes.r(k) + 0.125 <= 76.0);
}
