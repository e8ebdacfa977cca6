// What a fit found, taken over into another plan.
#include "advise/carry_over.h"

#include <catch2/catch.hpp>

#include "order/reel_plan.h"
#include "plan/plan_file.h"

using namespace laywright;

namespace {

Fitted fitted(const char* path, double planned, double sigma) {
  return {{path, "", planned, 0, 0, 0}, 0, sigma, 0, 0};
}

}  // namespace

TEST_CASE("a pitch is carried over in proportion, stops and dwell by the same amount, steps along with them") {
  const Plan wound = plan_from_text(testing::reel, "").value();
  Fit fit;
  fit.fitted = {fitted("traverse.pitch", 1.02, 0.002), fitted("traverse.left_stop", 0.5, 0.03),
                fitted("traverse.reversal.turns", 0.5, 0.02)};
  fit.corrections = {{"traverse.pitch", 1.0}, {"traverse.left_stop", 0.4}, {"traverse.reversal.turns", 0.2}};
  PlanDraft next = wound.draft();
  next.traverse.pitch_mm = 0.51;
  next.traverse.left_stop_mm = 0.3;
  next.traverse.reversal.turns = 0.1;
  next.wind.steps = {{3, 2.04, std::nullopt, 0.7}};
  const std::vector<CarriedSetting> carried = carry_over(wound, fit, next);
  CHECK(next.traverse.pitch_mm == 0.5);        // 0.51 x 1.0 / 1.02
  CHECK(next.traverse.left_stop_mm == 0.2);    // 0.3 - 0.1, to a hundredth, without a tail
  CHECK(next.traverse.reversal.turns == 0.0);  // 0.1 - 0.3 would be less than none
  CHECK(next.wind.steps[0].pitch_mm == 2.0);
  CHECK(next.wind.steps[0].right_stop_mm == 0.7);
  REQUIRE(carried.size() == 4);
  CHECK(carried[1].path == "wind.step[0].pitch");
  CHECK(carried[1].before == 2.04);
}

TEST_CASE("nothing is carried over where a fit corrects nothing, or the reversal is of another kind") {
  const Plan wound = plan_from_text(testing::reel, "").value();
  PlanDraft next = wound.draft();
  CHECK(carry_over(wound, Fit{}, next).empty());
  next.traverse.reversal.kind = ReversalKind::ramp;
  next.traverse.reversal.turns = 1.0;
  Fit fit;
  fit.fitted = {fitted("traverse.reversal.turns", 0.5, 0.02)};
  fit.corrections = {{"traverse.reversal.turns", 0.2}};
  CHECK(carry_over(wound, fit, next).empty());
  CHECK(next.traverse.reversal.turns == 1.0);
}
