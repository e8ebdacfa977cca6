#include <algorithm>
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

TEST_CASE("a setting stands only where the machine can set it, and within its range") {
  SearchableSetting searchable;
  searchable.low = 0.2501;
  searchable.high = 0.2699;
  searchable.step = 0.005;
  searchable.now = 0.26;
  CHECK(searchable.nearest(0.2631) == Approx(0.265));
  CHECK(searchable.nearest(9.0) == Approx(0.265));
  CHECK(searchable.nearest(-9.0) == Approx(0.255));
}

TEST_CASE("what the person requests of a key holds, and what cannot be followed is refused") {
  const PlanDraft draft = narrow_draft();
  const auto searchables = searchables_of(
      draft, {{"traverse.pitch", 0.25, 0.27, 0.005, false}, {"traverse.left_stop", {}, {}, {}, true}}, false);
  REQUIRE(searchables.ok());
  REQUIRE(searchables.value().size() == 3);  // and the dwell
  CHECK(searchables.value()[0].low == 0.25);
  CHECK(searchables.value()[0].step == 0.005);
  CHECK(searchables.value()[1].path == "traverse.right_stop");
  CHECK_FALSE(searchables_of(draft, {{"traverse.motion", {}, {}, {}, false}}, false).ok());
  CHECK_FALSE(searchables_of(draft, {{"traverse.pitch", 0.3, 0.2, {}, false}}, false).ok());
}

TEST_CASE("stops that drift outward become steps of the wind") {
  PlanDraft draft = narrow_draft();
  draft.spool.flange_taper_rad = 5.0 * std::numbers::pi / 180.0;
  const auto searchables = searchables_of(draft, {}, false);
  REQUIRE(searchables.ok());
  const SearchableSetting& drift = searchables.value().back();
  REQUIRE(drift.path == drift_path);
  PlanDraft stepped = draft;
  drift.set(stepped, 0.018);
  REQUIRE_FALSE(stepped.wind.steps.empty());
  CHECK(check(stepped).ok());
  const WindStep& step = stepped.wind.steps.back();
  // Rounded to the dial.
  CHECK(*step.left_stop_mm ==
        Approx(0.08 - 0.018 * (step.from_layer - 1)).margin(0.5 * searchables.value()[1].step + 1e-9));
}

TEST_CASE("a dwell can be turned on where the guide turns back at once, and off again") {
  const PlanDraft draft = narrow_draft();
  REQUIRE(draft.traverse.reversal.kind == ReversalKind::instant);
  const auto searchables = searchables_of(draft, {}, false);
  REQUIRE(searchables.ok());
  const auto dwell =
      std::find_if(searchables.value().begin(), searchables.value().end(),
                   [](const SearchableSetting& searchable) { return searchable.path == "traverse.reversal.turns"; });
  REQUIRE(dwell != searchables.value().end());
  PlanDraft on = draft;
  dwell->set(on, 1.5);
  CHECK(on.traverse.reversal.kind == ReversalKind::dwell);
  CHECK(on.traverse.reversal.turns == 1.5);
  PlanDraft off = draft;
  dwell->set(off, 0.0);
  CHECK(off.traverse.reversal.kind == ReversalKind::instant);
}

TEST_CASE("only what is set at a machine is turned, the free length where it is long") {
  const auto paths = [](const PlanDraft& draft) {
    std::vector<std::string> all;
    const auto searchables = searchables_of(draft, {}, false);
    REQUIRE(searchables.ok());
    for (const SearchableSetting& searchable : searchables.value()) all.push_back(searchable.path);
    return all;
  };
  PlanDraft draft = narrow_draft();
  draft.traverse.reversal.lost_motion_mm = 0.4;
  draft.traverse.pitch_scatter = 0.02;
  std::vector<std::string> expected{"traverse.pitch", "traverse.left_stop", "traverse.right_stop",
                                    "traverse.reversal.turns"};
  CHECK(paths(draft) == expected);
  draft.traverse.free_length_mm = 400.0;  // long: over 400 d
  expected.emplace_back("traverse.free_length");
  CHECK(paths(draft) == expected);
}

TEST_CASE("a wind with piled edges becomes a good one, the same on any number of threads") {
  PlanDraft draft = narrow_draft();
  draft.traverse.reversal.kind = ReversalKind::dwell;
  draft.traverse.reversal.turns = 4.0;
  const Plan plan = checked(draft);
  Progress progress;
  const Result<Improvement> two = improve(plan, quick(2), progress);
  REQUIRE(two.ok());
  INFO(two.value().text);
  CHECK(two.value().plan.verdict.grade == Grade::do_not_wind);
  CHECK_FALSE(two.value().leave_it);
  REQUIRE_FALSE(two.value().best.empty());
  const Proposal& best = two.value().best.front();
  CHECK(best.verdict.grade == Grade::good);
  CHECK_THAT(best.text, Catch::Matchers::Contains("the dwell at the stops to 0 turns (now 4 turns)") &&
                            Catch::Matchers::Contains("Good instead of do not wind"));
  // Better on each draw, not only on their mean.
  REQUIRE(best.draw_costs.size() == two.value().plan.draw_costs.size());
  for (std::size_t i = 0; i < best.draw_costs.size(); ++i)
    CHECK(best.draw_costs[i] < two.value().plan.draw_costs[i]);
  // The proposal is what it says: laid again, it has those figures.
  const Wound again = wound(best.draft);
  CHECK(outcome_of(again.plan, again.build, again.measurements).outer_diameter.greatest_mm ==
        best.outcome.outer_diameter.greatest_mm);

  const Result<Improvement> one = improve(plan, quick(1), progress);
  REQUIRE(one.ok());
  CHECK(one.value().best.front().values == best.values);
  CHECK(one.value().best.front().cost == best.cost);
}

TEST_CASE("a plan that is good on all its draws is left as it is, unless a person weighs otherwise") {
  PlanDraft draft = narrow_draft();
  draft.traverse.free_length_mm = 40.0;
  draft.traverse.left_stop_mm = draft.traverse.right_stop_mm = 0.1;
  const Plan plan = checked(draft);
  Progress progress;
  const Result<Improvement> left = improve(plan, quick(2), progress);
  REQUIRE(left.ok());
  CHECK(left.value().leave_it);
  CHECK(left.value().best.empty());
  CHECK(left.value().plan.good_draws == left.value().plan.draws);
  CHECK_THAT(left.value().text, Catch::Matchers::StartsWith("Leave the settings as they are"));

  ImproveSettings weighed = quick(2);
  weighed.trials = 8;
  weighed.weights = MeritWeights{1.0, 1.0, 1.0};
  const Result<Improvement> searched = improve(plan, weighed, progress);
  REQUIRE(searched.ok());
  CHECK_FALSE(searched.value().leave_it);
  CHECK(searched.value().trials > left.value().trials);
}

TEST_CASE("a wind that is laid well, but catches when it is drawn off, is not left as it is") {
  PlanDraft draft = narrow_draft();
  draft.traverse.free_length_mm = 40.0;
  draft.traverse.left_stop_mm = draft.traverse.right_stop_mm = 0.1;
  draft.limits.payoff_force = 1.001;  // as a customer may ask for who takes it off by a weak motor
  Progress progress;
  ImproveSettings settings = quick(2);
  settings.trials = 8;
  const Result<Improvement> improved = improve(checked(draft), settings, progress);
  REQUIRE(improved.ok());
  CHECK(improved.value().plan.outcome.payoff->greatest > 1.001);
  CHECK_FALSE(improved.value().leave_it);
  CHECK(improved.value().plan.good_draws < improved.value().plan.draws);
}

namespace {

Trial trial_with(std::vector<Check> checks) {
  Trial trial;
  trial.checks = std::move(checks);
  return trial;
}

// Of a limit of 1 d, so much.
Check ridge(double value) {
  return {Weighed::ridge, Side::left, value, 1.0, false, 1.0 - value, grade_at_most(value, 1.0)};
}
Check ride_ups(double value) {
  return {Weighed::ride_ups, {}, value, 300.0, false, 300.0 - value, grade_at_most(value, 300.0)};
}

}  // namespace

TEST_CASE(
    "merit counts what is past good before all else, ride-ups as much as ridges, and then the room that is left") {
  const Plan plan = checked(narrow_draft());
  const auto cost = [&](std::vector<Check> checks, const std::optional<MeritWeights>& weights = {}) {
    return cost_of(merit_of(plan, trial_with(std::move(checks))), weights);
  };
  // Good ends at three quarters of a limit (grade.h).
  CHECK(merit_of(plan, trial_with({ridge(0.75), ride_ups(225.0)})).past_good == Approx(0.0).margin(1e-12));
  CHECK(merit_of(plan, trial_with({ridge(1.5), ride_ups(450.0)})).past_good == Approx(2.0));
  CHECK(cost({ridge(0.1), ride_ups(450.0)}) == Approx(cost({ridge(1.5), ride_ups(30.0)})));
  CHECK(cost({ridge(0.76), ride_ups(0.0)}) > cost({ridge(0.74), ride_ups(220.0)}));
  CHECK(cost({ridge(0.2), ride_ups(30.0)}) < cost({ridge(0.3), ride_ups(30.0)}));

  // Weights rule among good ones: the sum of 2 x 1 % + 3 x 1 d + 4 x 10 %.
  Merit merit;
  merit.gap_share = 0.01;
  merit.edge_deviation_d = 1.0;
  merit.rim_use = 0.1;
  CHECK(cost_of(merit, MeritWeights{2.0, 3.0, 4.0}) == Approx(45.0));
}
