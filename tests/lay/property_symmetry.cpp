// A mirrored plan gives the mirrored build, and a plan ten times as large the same build ten times as large.
#include <algorithm>
#include <cmath>
#include <utility>

#include <catch2/catch.hpp>

#include "random_plans.h"

using namespace laywright;

namespace {

// Seen from the other end of the axis.
PlanDraft mirrored(PlanDraft plan) {
  std::swap(plan.traverse.left_stop_mm, plan.traverse.right_stop_mm);
  for (WindStep& step : plan.wind.steps) std::swap(step.left_stop_mm, step.right_stop_mm);
  plan.traverse.start = plan.traverse.start == Side::left ? Side::right : Side::left;
  plan.spool.barrel_diameter_mm += plan.spool.barrel_taper_mm;
  plan.spool.barrel_taper_mm = -plan.spool.barrel_taper_mm;
  return plan;
}

PlanDraft scaled(PlanDraft plan, double factor) {
  const auto scale = [factor](auto&... lengths) { ((lengths *= factor), ...); };
  const auto scale_given = [factor](std::optional<double>& length) {
    if (length) *length *= factor;
  };
  Spool& spool = plan.spool;
  scale(spool.barrel_diameter_mm, spool.flange_diameter_mm, spool.inside_width_mm, spool.barrel_taper_mm,
        spool.flange_runout_mm, plan.fiber.diameter_mm);
  Traverse& traverse = plan.traverse;
  scale(traverse.pitch_mm, traverse.left_stop_mm, traverse.right_stop_mm, traverse.free_length_mm,
        traverse.guide_play_mm, traverse.reversal.lost_motion_mm, traverse.reversal.stop_scatter_mm);
  // Of the same material, twist grows with the square as the pull that strains it as much does.
  if (plan.wind.tension_N) *plan.wind.tension_N *= factor * factor;
  scale_given(plan.wind.length_mm);
  scale_given(plan.wind.diameter_mm);
  for (WindStep& step : plan.wind.steps) {
    scale_given(step.pitch_mm);
    scale_given(step.left_stop_mm);
    scale_given(step.right_stop_mm);
  }
  return plan;
}

double mean_radius(const Build& build) {
  double sum = 0.0;
  for (std::size_t k = 0; k < build.nodes.size(); ++k) sum += build.nodes.r(k);
  return sum / static_cast<double>(build.nodes.size());
}

// Greatest distance between the nodes of `one` and those of `other` brought back by x = offset + factor * x'. Infinite where
// one ends sooner: a wind to a length or a diameter that has gone another way.
double worst_difference(const Build& one, const Build& other, double offset, double factor) {
  REQUIRE(one.stations_per_turn == other.stations_per_turn);
  if (one.nodes.size() != other.nodes.size()) return HUGE_VAL;
  double worst = 0.0;
  for (std::size_t k = 0; k < one.nodes.size(); ++k) {
    const double dx = one.nodes.x(k) - offset - factor * other.nodes.x(k);
    const double dr = one.nodes.r(k) - std::abs(factor) * other.nodes.r(k);
    worst = std::max(worst, std::hypot(dx, dr));
  }
  return worst / one.fiber_diameter_mm;
}

}  // namespace

// A few winds carry rounding on until a turn falls to the other side, from where the free span only just touches a turn
// ahead: most do not.
TEST_CASE("a mirrored plan gives the mirrored build, node by node, on nine plans of ten") {
  int agree = 0;
  constexpr int plans = 40;
  for (std::uint64_t seed = 1; seed <= plans; ++seed) {
    // No scatter: what is drawn for a stop is the same whichever side it is on. Flat fiber: what falls from where there is
    // no rest carries rounding on.
    PlanDraft draft = random_plans::draft(seed, {false, true, true, 40.0});
    draft.fiber.section = FiberSection::flat;
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    const Build one = random_plans::laid(random_plans::plan_of(draft));
    const Build other = random_plans::laid(random_plans::plan_of(mirrored(draft)));
    // Fiber without friction never quite rests, and carries rounding on from node to node.
    const bool rests = draft.fiber.friction > 0.0;
    if (worst_difference(one, other, draft.spool.inside_width_mm, -1.0) >= (rests ? 1e-3 : 0.05)) continue;
    ++agree;
    CHECK(one.length_mm == Approx(other.length_mm).epsilon(rests ? 1e-7 : 1e-5));
  }
  INFO(agree << " of " << plans << " plans");
  CHECK(10 * agree >= 9 * plans);
}

TEST_CASE("a long mirrored wind is the same on the whole") {
  for (std::uint64_t seed = 41; seed <= 46; ++seed) {
    PlanDraft draft = random_plans::draft(seed, {false, false, true, 500.0});
    // By turns: a wind to a diameter ends with the first turn that reaches it, which is chance.
    draft.wind = {};
    draft.wind.turns = 500.0;
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    const Build one = random_plans::laid(random_plans::plan_of(draft));
    const Build other = random_plans::laid(random_plans::plan_of(mirrored(draft)));
    // Coarse winds are loose and jumpy, and so are ridges of a dwell: rounding alone makes another wind of them.
    const bool close = draft.traverse.pitch_mm < 1.5 * draft.fiber.diameter_mm;
    const bool stands = draft.traverse.reversal.kind == ReversalKind::dwell;
    const double agreement = !close ? 0.02 : stands ? 0.01 : 0.005;
    CHECK(one.turns == other.turns);
    CHECK(one.length_mm == Approx(other.length_mm).epsilon(agreement));
    CHECK(mean_radius(one) == Approx(mean_radius(other)).epsilon(agreement));
  }
}

TEST_CASE("round fiber gives the mirrored and the larger build, node by node, on nine plans of ten") {
  int agree = 0;
  int plans = 0;
  for (std::uint64_t seed = 101; seed <= 130; ++seed) {
    const PlanDraft draft = random_plans::draft(seed, {true, false, true, 15.0});
    if (draft.fiber.friction == 0.0) continue;
    const Build one = random_plans::laid(random_plans::plan_of(draft));
    const Build other = random_plans::laid(random_plans::plan_of(mirrored(draft)));
    const Build ten = random_plans::laid(random_plans::plan_of(scaled(draft, 10.0)));
    plans += 2;
    agree += worst_difference(one, other, draft.spool.inside_width_mm, -1.0) < 1e-3 ? 1 : 0;
    agree += worst_difference(one, ten, 0.0, 0.1) < 1e-3 ? 1 : 0;
  }
  INFO(agree << " of " << plans);
  CHECK(plans > 40);
  CHECK(agree >= plans * 9 / 10);
}

TEST_CASE("a plan ten times as large gives the same build in diameters") {
  for (std::uint64_t seed = 51; seed <= 80; ++seed) {
    // Bending has a length of its own, sqrt(E I / T), that does not grow with the plan.
    PlanDraft draft = random_plans::draft(seed, {true, false, true, 40.0});
    draft.fiber.section = FiberSection::flat;
    INFO("seed " << seed << ": " << random_plans::in_words(draft));
    const Build one = random_plans::laid(random_plans::plan_of(draft));
    const Build ten = random_plans::laid(random_plans::plan_of(scaled(draft, 10.0)));
    const bool rests = draft.fiber.friction > 0.0;
    CHECK(worst_difference(one, ten, 0.0, 0.1) < (rests ? 1e-3 : 0.05));
    CHECK(ten.length_mm == Approx(10.0 * one.length_mm).epsilon(rests ? 1e-7 : 1e-5));
  }
}
