// Laid turns of a soft fiber give way. How much a ridge sinks when all that lies may move has a foreign judge, Box2D
// (tests/bench/bench_ridge.cpp); here: that nothing is broken by it, that it does not depend on the mesh, and whom it leaves alone.
#include <cmath>

#include "lay/penetration_checker.h"
#include "lay/torsion.h"
#include "usual_fiber.h"
#include "wound.h"

using namespace laywright;
using laywright::testing::usual::d;

namespace {

// Twenty newtons would double its length (invented, as a soft yarn).
PlanDraft yarn(double dwell_turns) {
  PlanDraft draft;
  draft.spool.barrel_diameter_mm = 150.0;
  draft.spool.flange_diameter_mm = 190.0;
  draft.spool.inside_width_mm = 12.0;
  draft.fiber.diameter_mm = draft.fiber.core_diameter_mm.emplace(d);
  draft.fiber.modulus_MPa = 20.0 / (3.14159265 / 4.0 * d * d);
  draft.fiber.friction = 0.5;
  draft.wind.tension_N = 0.5;
  draft.traverse.pitch_mm = 0.26;
  draft.traverse.free_length_mm = 5.0;
  draft.traverse.left_stop_mm = draft.traverse.right_stop_mm = 0.5 * d;
  if (dwell_turns > 0.0) draft.traverse.reversal = {ReversalKind::dwell, dwell_turns, 0.0, 0.0};
  draft.wind.turns = 6.0 * (11.75 / 0.26 + dwell_turns);
  return draft;
}

Build laid(const PlanDraft& draft, double fidelity, bool gives_way) {
  const Plan plan = check(draft).value();
  REQUIRE((!gives_way || draft.fiber.modulus_MPa > 1e4 || is_soft(plan, torsion_of(plan))));
  LaySettings settings;
  settings.fidelity = fidelity;
  settings.gives_way = gives_way;
  Progress progress;
  return lay(plan, settings, progress).value();
}

double ridge_d(const PlanDraft& draft, const Build& build) {
  Progress progress;
  const EdgeShapes edges = measure(check(draft).value(), build, progress).edges.value();
  return (edges[0].ridge_mm + edges[1].ridge_mm) / (2.0 * d);
}

}  // namespace

TEST_CASE("the ridge of a soft fiber sinks, on any mesh, and no turn enters another") {
  const PlanDraft draft = yarn(10.0);
  const double stays = ridge_d(draft, laid(draft, 0.25, false));
  const Build build = laid(draft, 0.25, true);
  const double gives = ridge_d(draft, build);
  const double twice = ridge_d(draft, laid(draft, 0.5, true));
  INFO("ridge " << stays << " d where turns stay, " << gives << " d where they give way, " << twice
                << " d with twice the stations");
  CHECK(stays > 5.0);
  CHECK(gives < 0.7 * stays);
  CHECK(gives > 0.2 * stays);
  CHECK(twice == Approx(gives).epsilon(0.25));

  const referee::Clearance least = referee::clearance(check(draft).value(), build);
  INFO(least.text());
  CHECK(least.least > -1e-6);
  CHECK(laid(draft, 0.25, true).hash() == build.hash());
}

TEST_CASE("turns of a level wind, and of stiff fiber, stay where they are laid") {
  const PlanDraft level = yarn(0.0);
  CHECK(laid(level, 0.25, true).hash() == laid(level, 0.25, false).hash());
  PlanDraft glass = yarn(10.0);
  glass.fiber.modulus_MPa = 72e3;
  CHECK(laid(glass, 0.25, true).hash() == laid(glass, 0.25, false).hash());
}
