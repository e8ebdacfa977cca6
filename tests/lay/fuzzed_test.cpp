// What fuzzing has found in the lay model, so that it stays found: plans at the edge of what a plan may say.
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "lay/guide.h"
#include "lay/penetration_checker.h"
#include "lay/random_plans.h"
#include "lay/settle.h"
#include "plan/plan_file.h"
#include "plans.h"

using namespace laywright;
using namespace laywright::testing;

TEST_CASE("a node that comes down beside a turn ends on the flange that opens under it") {
  // The right face opens at atan(1.623) = 58 degrees. A turn at x 0.2977 overhangs it: straight down along its left side,
  // at x 0.2645, the face lies at r = (0.2645 + 13.3359) / 1.62327 = 8.3784, above the barrel.
  const double d = 0.033209585778511685;
  Section section(d, {8.37793706693, 0.0}, {13.6128879572, -1.62326757441}, {-13.3358520706, 1.62326757441});
  section.insert(0.2173079981, 8.377937067, 0);
  section.insert(0.2976892002, 8.44402492364, 0);
  const double x = 0.2976892002 - d;
  const Contact side{Contact::Kind::left_side, section.last()};
  for (const double friction : {0.0, 0.7}) {
    CAPTURE(friction);
    Resting node{x, 8.3811756, side, side};
    settle(section, node, x + 0.0038, 8.3752, FrictionCone(friction));
    const double face = section.right().at_axis + section.right().slope * node.r;
    CHECK(node.x <= face + 1e-9 * d);
    CHECK(node.r >= section.barrel().at_zero - 1e-9 * d);
  }
}

namespace {

void check_clear(const PlanDraft& draft, std::uint64_t seed, double fidelity) {
  const Plan plan = random_plans::plan_of(draft);
  const Build build = random_plans::laid(plan, seed, fidelity);
  const referee::Clearance clearance = referee::clearance(plan, build);
  INFO(clearance.text());
  CHECK(clearance.least > -1e-6);
}

}  // namespace

TEST_CASE("a turn is not lifted into turns that stand higher beside a flange that leans in") {
  PlanDraft draft = plain_draft();
  draft.spool.barrel_diameter_mm = 14.2444405183;
  draft.spool.flange_diameter_mm = 592.465521586;
  draft.spool.inside_width_mm = 2069.56621548;
  draft.spool.flange_runout_mm = 118.4931;
  draft.fiber.diameter_mm = 9.91289520983;
  draft.fiber.friction = 7.6;
  draft.traverse.pitch_mm = 10.9944875986;
  draft.traverse.left_stop_mm = 7.35507026135;
  draft.traverse.right_stop_mm = -6.79237902491;
  draft.traverse.start = Side::right;
  draft.traverse.free_length_mm = 0.0;
  draft.traverse.reversal.kind = ReversalKind::ramp;
  draft.traverse.reversal.turns = 106.24076298;
  draft.wind.turns.reset();
  draft.wind.length_mm = 197'617.0;
  check_clear(draft, 203, 0.05);
}

TEST_CASE("a stiff fiber that springs far above the rim ends the wind") {
  // To the last bit: where it springs to hangs on all of them.
  const Result<Plan> plan = plan_from_text(R"(format = "lay-plan 1"
[spool]
barrel_diameter = "419.0226096250408 mm"
flange_diameter = "428.3861241934338 mm"
inside_width = "9.959244818667505 mm"
flange_taper = "21.3357747768368022 deg"
[fiber]
diameter = "0.8759074900927672 mm"
friction = 0
modulus = "0.05623561438652526 GPa"
core_diameter = "0.4826526674250158 mm"
[traverse]
pitch = "0.02564230476283444 mm"
left_stop = "-1.622437021780133 mm"
right_stop = "-0.27980656603482235 mm"
start = "right"
free_length = "399.2698336303126 mm"
pitch_scatter = "10.195315480277714 %"
[traverse.reversal]
kind = "ramp"
turns = 728.3041238433007
stop_scatter = "1.1178808029450635 mm"
[wind]
length = "50.7536773293526 m"
tension = "0.0000025170989140763956 N"
[[wind.step]]
from_layer = 1
pitch = "0.02001333059634557 mm"
)",
                                           "stiff.lay.toml");
  REQUIRE(plan.ok());
  check_clear(plan.value().draft(), 84, 1.0);
}

TEST_CASE("a cone goes on under a flange that leans away from its end") {
  PlanDraft draft = plain_draft();
  draft.spool.barrel_diameter_mm = 5000.0;
  draft.spool.flange_diameter_mm = 5140.27;
  draft.spool.inside_width_mm = 228.9;
  draft.spool.barrel_taper_mm = -203.3;
  draft.spool.flange_runout_mm = 101.2;
  draft.fiber.diameter_mm = 7.32;
  draft.fiber.friction = 0.0;
  draft.traverse.pitch_mm = 8.966;
  draft.traverse.left_stop_mm = -12.35;
  draft.traverse.right_stop_mm = -12.56;
  draft.traverse.start = Side::right;
  draft.traverse.free_length_mm = 5923.0;
  draft.wind.turns = 3.0;
  const Plan plan = random_plans::plan_of(draft);
  const Build build = random_plans::laid(plan);
  CHECK(build.stopped_by == StopReason::turns);
  check_clear(draft, 1, 1.0);
}

TEST_CASE("a short free span does not drag the fiber up a flange that is nearly square") {
  PlanDraft draft = plain_draft();
  draft.spool.barrel_diameter_mm = 26.5741814134;
  draft.spool.flange_diameter_mm = 26.7637776781;
  draft.spool.inside_width_mm = 0.0381149037;
  draft.spool.flange_runout_mm = 0.00066525581;
  draft.fiber.diameter_mm = 0.0372411539;
  draft.fiber.friction = 0.0;
  draft.traverse.pitch_mm = 0.12639559706;
  draft.traverse.left_stop_mm = -0.0542433;
  draft.traverse.right_stop_mm = 0.0063792;
  draft.traverse.free_length_mm = 0.1723124;
  draft.traverse.reversal.lost_motion_mm = 0.0526734;
  draft.wind.turns = 1.5;
  const Plan plan = random_plans::plan_of(draft);
  const Build build = random_plans::laid(plan, 150, 0.05);
  // A second turn rests on the first, a diameter higher, well below the rim of 2.5 d.
  CHECK(build.turns == Approx(1.5));
  CHECK(build.stopped_by == StopReason::turns);
}

TEST_CASE("a guide whose pitch is coarser than its stroke keeps to its stops") {
  PlanDraft draft = plain_draft();
  draft.spool.inside_width_mm = 10.0;
  draft.traverse.left_stop_mm = 3.0;
  draft.traverse.right_stop_mm = 4.0;
  draft.traverse.pitch_mm = 9.0;  // three strokes of 3 mm in a turn
  const Plan plan = random_plans::plan_of(draft);
  Guide guide(plan, 1);
  double turned = 0.0;
  while (turned < 20.0 * std::numbers::pi) {
    turned += guide.advance(0.1).angle;
    CHECK(guide.x() >= 3.0 - 1e-9);
    CHECK(guide.x() <= 6.0 + 1e-9);
  }
  CHECK(guide.stroke() == Approx(30).margin(1));
}
