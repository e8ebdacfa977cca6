#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "advise/improve.h"
#include "narrow_plan.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

ImproveSettings quick(int threads) {
  ImproveSettings settings;
  settings.trials = 60;
  settings.best = 2;
  settings.threads = threads;
  return settings;
}

}  // namespace

TEST_CASE("the guide should turn back where the fiber reaches the flange") {
  // An instant reversal turns the lay point back L tan(alpha) ln 2 short of the guide's stop (derived, see MODEL.md);
  // for L 200, p 0.30, D 150 that is .088254 mm.
  PlanDraft draft = narrow_draft();
  draft.traverse.free_length_mm = 200.0;
  CHECK(ideal_stop_mm(draft, 0.30) == Approx(0.125 - 0.088254).margin(1e-6));
}

TEST_CASE("a knob stands only where the machine can set it, and within its range") {
  Knob knob;
  knob.low = 0.2501;
  knob.high = 0.2699;
  knob.step = 0.005;
  knob.now = 0.26;
  CHECK(knob.nearest(0.2631) == Approx(0.265));
  CHECK(knob.nearest(9.0) == Approx(0.265));
  CHECK(knob.nearest(-9.0) == Approx(0.255));
}

TEST_CASE("what the person wishes of a key holds, and what cannot be followed is refused") {
  const PlanDraft draft = narrow_draft();
  const auto knobs = knobs_of(
      draft, {{"traverse.pitch", 0.25, 0.27, 0.005, false}, {"traverse.left_stop", {}, {}, {}, true}}, false);
  REQUIRE(knobs.ok());
  REQUIRE(knobs.value().size() == 2);
  CHECK(knobs.value()[0].low == 0.25);
  CHECK(knobs.value()[0].step == 0.005);
  CHECK(knobs.value()[1].path == "traverse.right_stop");
  CHECK_FALSE(knobs_of(draft, {{"traverse.motion", {}, {}, {}, false}}, false).ok());
  CHECK_FALSE(knobs_of(draft, {{"traverse.pitch", 0.3, 0.2, {}, false}}, false).ok());
}

TEST_CASE("stops that drift outward become steps of the wind") {
  PlanDraft draft = narrow_draft();
  draft.spool.flange_taper_rad = 5.0 * std::numbers::pi / 180.0;
  const auto knobs = knobs_of(draft, {}, false);
  REQUIRE(knobs.ok());
  const Knob& drift = knobs.value().back();
  REQUIRE(drift.path == drift_path);
  PlanDraft stepped = draft;
  drift.set(stepped, 0.018);
  REQUIRE_FALSE(stepped.wind.steps.empty());
  CHECK(check(stepped).ok());
  const WindStep& step = stepped.wind.steps.back();
  // Rounded to the dial.
  CHECK(*step.left_stop_mm ==
        Approx(0.08 - 0.018 * (step.from_layer - 1)).margin(0.5 * knobs.value()[1].step + 1e-9));
}

TEST_CASE(
    "a wind with piled edges becomes one without pile-ups and flange gaps, the same on any number of threads") {
  PlanDraft draft = narrow_draft();
  draft.traverse.reversal.kind = ReversalKind::dwell;
  draft.traverse.reversal.turns = 4.0;
  const Plan plan = checked(draft);
  Progress progress;
  const Result<Improvement> two = improve(plan, quick(2), progress);
  REQUIRE(two.ok());
  INFO(two.value().text);
  CHECK_FALSE(two.value().plan.mean.keeps_limits());
  REQUIRE_FALSE(two.value().best.empty());
  const Proposal& best = two.value().best.front();
  CHECK(best.outcome.of(FindingKind::pile_up).places == 0);
  CHECK(best.outcome.of(FindingKind::flange_gap).places == 0);
  // The proposal is what it says: laid again, it has those figures.
  const Wound again = wound(best.draft);
  CHECK(outcome_of(again.plan, again.build, again.measurements).outer_diameter.greatest_mm ==
        best.outcome.outer_diameter.greatest_mm);

  const Result<Improvement> one = improve(plan, quick(1), progress);
  REQUIRE(one.ok());
  CHECK(one.value().best.front().values == best.values);
  CHECK(one.value().best.front().cost == best.cost);
}

TEST_CASE("without weights less gap comes before even edges, and those before the depth that is used") {
  const Merit base{0.0, 0.01, 1.0, 0.1};
  const double cost = cost_of(base, std::nullopt);
  CHECK(cost_of({0.0, 0.009, 1.5, 0.2}, std::nullopt) < cost);
  CHECK(cost_of({0.0, 0.01, 0.9, 0.2}, std::nullopt) < cost);
  CHECK(cost_of({0.0, 0.01, 1.0, 0.09}, std::nullopt) < cost);
  CHECK(cost_of({1.0, 0.0, 0.0, 0.0}, std::nullopt) > cost);
  // The sum of 2 x 1 % + 3 x 1 d + 4 x 10 %.
  CHECK(cost_of(base, MeritWeights{2.0, 3.0, 4.0}) == Approx(45.0));
}
