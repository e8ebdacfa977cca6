// What a customer is told is what laying and `capacity` say.
#include "answers/customer_figures.h"

#include <catch2/catch.hpp>

#include "advise/capacity.h"
#include "model/wound.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

CustomerFigures figures_of(const Plan& plan, const Wound& was) {
  Progress progress;
  const Result<CustomerFigures> figures = customer_figures(plan, was.build, was.measured, {}, 2, progress);
  REQUIRE(figures.ok());
  return figures.value();
}

Plan with_tolerance(double tolerance_mm) {
  PlanDraft draft = sample("parallel").draft();
  draft.fiber.diameter_tolerance_mm = tolerance_mm;
  const Result<Plan> plan = check(draft);
  REQUIRE(plan.ok());
  return plan.value();
}

}  // namespace

TEST_CASE("a customer's figures are those of the build and of capacity, with the stated margin about them") {
  const Plan plan = sample("parallel");
  const Wound was = wound(plan);
  const CustomerFigures figures = figures_of(plan, was);
  Progress progress;
  const double held = capacity(plan, {}, progress).value().first_touch_mm;
  CHECK(figures.capacity.value_mm == held);
  CHECK(figures.capacity.least_mm == Approx(0.97 * held));
  CHECK(figures.capacity.most_mm == Approx(1.03 * held));
  CHECK(figures.wound.length_mm == was.build.length_mm);
  CHECK(figures.diameter.value_mm == was.measured.outer_diameter.greatest_mm);
  CHECK(figures.wound.clearance_mm == was.measured.rim_clearance_mm);
  // The area of the wound ring times 1.03, on a barrel of 100 mm.
  const double d = figures.diameter.value_mm;
  CHECK(figures.diameter.most_mm * figures.diameter.most_mm - 1e4 == Approx(1.03 * (d * d - 1e4)));
  CHECK_FALSE(figures.scatters);
}

TEST_CASE("a stated tolerance widens a customer's figures by the ends of it") {
  const Plan plan = with_tolerance(0.05);
  const Wound was = wound(plan);
  const CustomerFigures figures = figures_of(plan, was);
  const double held = figures.capacity.value_mm;
  // Thinner fiber gives more, thicker less; how much is a matter of whole layers.
  CHECK(figures.capacity.least_mm < 0.97 * held * 0.98);
  CHECK(figures.capacity.most_mm > 1.03 * held * 1.002);
  CHECK(figures.diameter.most_mm > figures.diameter.value_mm + 0.1);
  CHECK(figures.tolerance_mm == 0.05);
}

TEST_CASE("a customer's figures are given up when they are not wanted any more") {
  const Plan plan = sample("parallel");
  const Wound was = wound(plan);
  Progress progress;
  progress.cancel();
  const auto figures = customer_figures(plan, was.build, was.measured, {}, 1, progress);
  REQUIRE_FALSE(figures.ok());
  CHECK(figures.issues().front().what == stopped_text);
}
