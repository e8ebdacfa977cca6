// The usual limits, each with where it comes from. "Practice" is common practice, without a source.
#include <catch2/catch.hpp>

#include "measure/acceptance.h"
#include "measure/grade.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

Acceptance accepted(const PlanDraft& draft) { return acceptance_of(plan_of(draft)); }

PlanDraft crossed_draft() {
  PlanDraft crossed = draft();
  crossed.traverse.pitch_mm = 4.0;
  return crossed;
}

}  // namespace

TEST_CASE("a product is known by its core and its pitch") {
  PlanDraft plan = draft();
  CHECK(product_of(plan_of(plan)) == Product::fiber);  // nothing tells: the strictest
  plan.fiber.core_diameter_mm = 0.51;                  // glass of .125 mm in a coating of .245
  CHECK(product_of(plan_of(plan)) == Product::fiber);
  plan.fiber.core_diameter_mm = 0.8;  // copper of .02 mm in enamel of grade 2, IEC 60317-0-1, from memory
  CHECK(product_of(plan_of(plan)) == Product::wire);
  plan.traverse.pitch_mm = 2.0;  // too coarse for a close wind, and no crossed one yet: gaps count against it
  CHECK(product_of(plan_of(plan)) == Product::wire);
  plan.traverse.pitch_mm = 4.0;
  CHECK(product_of(plan_of(plan)) == Product::crossed);
  // Polyester, 10 to 15 GPa, and aluminium, 70 GPa, both from memory.
  plan.traverse.pitch_mm = 1.0;
  plan.fiber.modulus_MPa = 15e3;
  CHECK(product_of(plan_of(plan)) == Product::yarn);
  plan.fiber.modulus_MPa = 70e3;
  CHECK(product_of(plan_of(plan)) == Product::wire);
}

TEST_CASE("the usual limits of a close wind") {
  const Acceptance fiber = accepted(draft());
  CHECK(fiber.ridge_d == 1.0);                  // limits.pile_up, as it has been
  CHECK(fiber.valley_d == 1.0);                 // as ridges: practice, level to a layer under a straight edge
  CHECK(fiber.unevenness_d == 1.0);             // the same between caliper readings left, middle, right
  CHECK(*fiber.open_gaps == 0.02);              // practice: odd gaps, 1 m in 50, and no layer of them
  CHECK(*fiber.flange_gap_d == 2.0);            // geometry: two turns find room, and one falls to the bottom
  CHECK(*fiber.dropped_turns_per_km == 200.0);  // practice: a turn in ten, of some .5 m
  CHECK(*fiber.drop_depth_d == 4.0);            // practice: walls of several layers on both sides hold it
  CHECK(fiber.payoff_force == 1.5);             // practice: half as much again as winding
  CHECK(*fiber.ride_ups_per_km == 300.0);       // practice: half as many again, since they come off first
  CHECK(fiber.ribbon_d == 1.0);                 // geometry: turns on turns
  CHECK(fiber.rim_clearance_mm == 0.0);         // what the plan asks for; by itself only that nothing stands out
  CHECK(fiber.pull == 1.0);                     // fiber.max_tension is already what it may bear

  PlanDraft wire = draft();
  wire.fiber.core_diameter_mm = 0.9;
  const Acceptance copper = accepted(wire);  // practice: a delivery spool is even and comes off freely
  CHECK(copper.valley_d == fiber.valley_d);
  CHECK(*copper.open_gaps == 0.2);  // practice: as a wild spool that is even, not as a layer of gaps
  // practice: a place in each turn of the barrel, and no layer is left; wire bears it, its delivery spool may be wild if it is even
  const double turns_per_km = 1.0e6 / (3.14159265358979 * wire.spool.barrel_diameter_mm);
  CHECK(*copper.dropped_turns_per_km == Approx(turns_per_km));
  CHECK(*copper.ride_ups_per_km == Approx(turns_per_km));
  CHECK(grade_at_most(9.0 * turns_per_km, turns_per_km, copper.disorder) == Grade::marginal);
  CHECK(grade_at_most(0.5 * turns_per_km, turns_per_km, copper.disorder) == Grade::good);
  CHECK(grade_at_most(2700.0, 300.0, fiber.disorder) == Grade::do_not_wind);

  wire.limits.ride_ups_per_km = 100.0;  // whoever gives it means it
  CHECK(grade_at_most(126.0, 100.0, accepted(wire).disorder) == Grade::do_not_wind);

  PlanDraft soft = draft();
  soft.fiber.core_diameter_mm = 1.0;
  soft.fiber.modulus_MPa = 5e3;
  const Acceptance yarn = accepted(soft);  // practice: a yarn is not laid turn beside turn
  CHECK_FALSE(yarn.dropped_turns_per_km);
  CHECK_FALSE(yarn.drop_depth_d);
  CHECK_FALSE(yarn.ride_ups_per_km);
  CHECK(yarn.valley_d == fiber.valley_d);
  CHECK(*yarn.open_gaps == 0.2);
  CHECK(*yarn.flange_gap_d == 2.0);
}

TEST_CASE("in a crossed wind, what its pitch plans is not weighed") {
  const Acceptance crossed = accepted(crossed_draft());
  CHECK_FALSE(crossed.open_gaps);
  CHECK_FALSE(crossed.flange_gap_d);
  CHECK_FALSE(crossed.dropped_turns_per_km);
  CHECK_FALSE(crossed.drop_depth_d);
  CHECK_FALSE(crossed.ride_ups_per_km);
  CHECK(crossed.valley_d == 6.0);      // practice: edges end where the guide turns back
  CHECK(crossed.unevenness_d == 3.0);  // practice
  CHECK(crossed.ribbon_d == 1.0);
}

TEST_CASE("the plan's own limits come before the usual ones, of any product") {
  PlanDraft plan = crossed_draft();
  plan.limits.pile_up_d = 0.5;
  plan.limits.valley_d = 0.6;
  plan.limits.unevenness_d = 0.7;
  plan.limits.open_gaps = 0.5;
  plan.limits.flange_gap_d = 9.0;
  plan.limits.dropped_turns_per_km = 10.0;
  plan.limits.drop_depth_d = 2.0;
  plan.limits.ride_ups_per_km = 20.0;
  plan.limits.ribbon_d = 0.8;
  plan.limits.rim_clearance_mm = 3.0;
  plan.limits.payoff_force = 3.0;
  plan.limits.pull = 0.2;
  const Acceptance own = accepted(plan);
  CHECK(own.ridge_d == 0.5);
  CHECK(own.valley_d == 0.6);
  CHECK(own.unevenness_d == 0.7);
  CHECK(own.open_gaps == 0.5);
  CHECK(own.flange_gap_d == 9.0);
  CHECK(own.dropped_turns_per_km == 10.0);
  CHECK(own.drop_depth_d == 2.0);
  CHECK(own.ride_ups_per_km == 20.0);
  CHECK(own.ribbon_d == 0.8);
  CHECK(own.rim_clearance_mm == 3.0);
  CHECK(own.payoff_force == 3.0);
  CHECK(own.pull == 0.2);
}

TEST_CASE("a figure within a quarter of its limit is marginal, on either side") {
  CHECK(grade_at_most(1.5, 2.0) == Grade::good);
  CHECK(grade_at_most(1.51, 2.0) == Grade::marginal);
  CHECK(grade_at_most(2.5, 2.0) == Grade::marginal);
  CHECK(grade_at_most(2.51, 2.0) == Grade::do_not_wind);
  CHECK(grade_at_most(0.0, 0.0) == Grade::good);
  CHECK(grade_at_most(0.01, 0.0) == Grade::do_not_wind);
}
