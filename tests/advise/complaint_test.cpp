#include <catch2/catch.hpp>

#include "advise/sought_finding.h"
#include "narrow_plan.h"

using namespace laywright;

namespace {

Finding finding(FindingKind kind, double from, double to, double size_d, int occurrences) {
  Finding made;
  made.kind = kind;
  made.x_mm = {from, to};
  made.size_d = size_d;
  made.size_mm = 0.25 * size_d;
  made.occurrences = occurrences;
  return made;
}

}  // namespace

TEST_CASE("a finding is looked for again in its quarters of the width") {
  const Plan plan = laywright::testing::checked(laywright::testing::narrow_draft());  // 12 mm wide: quarters of 3 mm
  const SoughtFinding edge = sought_finding(plan, finding(FindingKind::ride_up, 0.2, 1.0, 2.0, 5));
  // Elsewhere in the first quarter, split in two: 5 places of 4, and 3 of 1.
  const FindingAmount split = amount_of(
      edge, {finding(FindingKind::ride_up, 1.5, 2.0, 2.0, 5), finding(FindingKind::ride_up, 2.5, 2.9, 1.0, 3)});
  CHECK(split.places == Approx(8.0));
  CHECK(split.gravity == Approx(5.0 * 4.0 + 3.0));
  CHECK(split.worst_mm == Approx(0.5));
  // Another kind, another side, another part of the width.
  Finding other_side = finding(FindingKind::ride_up, 0.2, 1.0, 2.0, 5);
  other_side.side = Side::left;
  CHECK(amount_of(edge, {finding(FindingKind::gap, 0.2, 1.0, 2.0, 5), other_side,
                         finding(FindingKind::ride_up, 8.0, 9.0, 2.0, 5)})
            .places == 0.0);
  // Half within.
  CHECK(amount_of(edge, {finding(FindingKind::ride_up, 1.0, 5.0, 1.0, 10)}).places == Approx(5.0));
}

TEST_CASE("gaps that the pitch makes are no fault") {
  PlanDraft coarse = laywright::testing::narrow_draft();
  coarse.traverse.pitch_mm = 0.75;  // gaps of 2 d are planned
  const Plan plan = laywright::testing::checked(coarse);
  CHECK(gravity_of_all(plan, {finding(FindingKind::gap, 1.0, 9.0, 2.0, 40)}) == 0.0);
  CHECK(gravity_of_all(plan, {finding(FindingKind::gap, 1.0, 9.0, 6.0, 2)}) == Approx(72.0));
  coarse.traverse.pitch_mm = 2.0;  // strokes cross
  const Plan crossed = laywright::testing::checked(coarse);
  CHECK(gravity_of_all(crossed, {finding(FindingKind::gap, 1.0, 9.0, 30.0, 40)}) == 0.0);
  CHECK(gravity_of_all(crossed, {finding(FindingKind::ribbon, 1.0, 9.0, 3.0, 2)}) == Approx(18.0));
}
