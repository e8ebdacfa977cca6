#include "advise/robust.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "narrow_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict_words.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

PlanDraft short_draft() {
  PlanDraft draft = narrow_draft();
  draft.wind.turns = 230.0;
  return draft;
}

WindVerdict alone(const PlanDraft& draft, const LaySettings& settings = {}) {
  Progress progress;
  return judge_plan(draft, settings, progress)->verdict;
}

WindVerdict over(const PlanDraft& draft, int count, int threads = 2) {
  Progress progress;
  const auto verdict = over_draws(checked(draft), {}, alone(draft), count, threads, progress);
  REQUIRE(verdict);
  return *verdict;
}

}  // namespace

TEST_CASE("draws have seeds of their own, and fiber spread evenly over its tolerance, and the first is the plan") {
  PlanDraft draft = short_draft();
  draft.fiber.diameter_tolerance_mm = 0.004;
  LaySettings settings;
  settings.seed = 7;
  const std::vector<TrialOrder> orders = robust_orders(draft, settings, 5);
  REQUIRE(orders.size() == 5);
  CHECK(orders[0].draft.fiber.diameter_mm == draft.fiber.diameter_mm);
  CHECK(orders[0].draft.traverse.left_stop_mm == draft.traverse.left_stop_mm);
  // Quarters of the tolerance, each by its middle.
  const double off[] = {0.0, -0.003, -0.001, 0.001, 0.003};
  for (std::size_t i = 0; i < orders.size(); ++i) {
    CHECK(orders[i].settings.seed == 7 + i);
    CHECK(orders[i].draft.fiber.diameter_mm == Approx(draft.fiber.diameter_mm + off[i]));
  }
  CHECK(orders[1].draft.traverse.left_stop_mm > draft.traverse.left_stop_mm);
}

TEST_CASE("a plan that states tolerance, scatter or play is told from one that does not") {
  CHECK_FALSE(states_scatter(short_draft()));
  const auto with = [](const auto& change) {
    PlanDraft draft = short_draft();
    change(draft);
    return states_scatter(draft);
  };
  CHECK(with([](PlanDraft& d) { d.fiber.diameter_tolerance_mm = 0.001; }));
  CHECK(with([](PlanDraft& d) { d.traverse.pitch_scatter = 0.001; }));
  CHECK(with([](PlanDraft& d) { d.traverse.reversal.stop_scatter_mm = 0.01; }));
  CHECK(with([](PlanDraft& d) { d.traverse.guide_play_mm = 0.1; }));
}

TEST_CASE(
    "the verdict over draws is the worst of them, whatever the threads, and what was weighed stays this build's") {
  PlanDraft draft = short_draft();
  // Stops that scatter by half a fiber, and fiber up to 4 % thicker than the pitch allows for.
  draft.traverse.reversal.stop_scatter_mm = 0.12;
  draft.fiber.diameter_tolerance_mm = 0.02;
  const WindVerdict first = alone(draft), whole = over(draft, 5);
  REQUIRE(whole.draws.size() == 5);
  const std::vector<TrialOrder> orders = robust_orders(draft, {}, 5);
  Grade worst = Grade::good;
  bool reason_is_one_of_them = false;
  for (std::size_t i = 0; i < orders.size(); ++i) {
    const WindVerdict each = alone(orders[i].draft, orders[i].settings);
    CHECK(whole.draws[i].grade == each.grade);
    CHECK(whole.draws[i].decides == name_of(each.checks[each.deciding]));
    worst = std::max(worst, each.grade);
    if (each.grade == whole.grade && each.reason == whole.reason && each.first == whole.first)
      reason_is_one_of_them = true;
  }
  CHECK(whole.grade == worst);
  CHECK(reason_is_one_of_them);
  REQUIRE(whole.checks.size() == first.checks.size());
  for (std::size_t i = 0; i < first.checks.size(); ++i) CHECK(whole.checks[i].value == first.checks[i].value);
  const WindVerdict again = over(draft, 5, 1);
  CHECK(verdict_line(again) == verdict_line(whole));
  CHECK_THAT(verdict_line(whole), Contains("of 5 draws"));
}

TEST_CASE("draws are stopped, and one draw is the build itself") {
  const PlanDraft draft = short_draft();
  Progress progress;
  progress.cancel();
  CHECK_FALSE(over_draws(checked(draft), {}, alone(draft), 3, 2, progress));
  const WindVerdict one = over(draft, 1);
  REQUIRE(one.draws.size() == 1);
  CHECK(one.grade == alone(draft).grade);
}
