// Builds written down, whose catches follow from closed forms.
#include <array>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "measure/fiber_line.h"
#include "measure/synthetic_build.h"
#include "payoff/hold.h"
#include "payoff/parts.h"
#include "payoff/payoff.h"
#include "payoff/payoff_words.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

constexpr int stations = 72;

PayoffRun paid_off(const Plan& plan, const Build& build, PayoffSettings settings = {}) {
  Progress progress;
  settings.each_node = true;
  return pay_off(plan, build, settings, progress);
}

int nodes_held_by(const PayoffRun& run, HeldBy by) { return run.nodes[static_cast<std::size_t>(by)]; }

// Two turns on the barrel, so far apart, one pressed between them, and `above` turns straight on it.
Build pressed_between_two(const Plan& plan, double apart, int above) {
  const double d = plan.fiber().diameter_mm, r0 = 0.5 * (plan.spool().barrel_diameter_mm + d);
  const double sits = r0 + std::sqrt(d * d - 0.25 * apart * apart);
  return BuildMaker(plan, stations)
      .stroke(1, 2,
              [=](double turn) {
                return Place{2.0 * d + (turn < 1.0 ? 0.0 : apart), r0, Support::barrel};
              })
      .stroke(-1, 1 + above,
              [=](double turn) {
                return Place{2.0 * d + 0.5 * apart, sits + std::floor(turn + 1e-9) * d, Support::valley};
              })
      .finish();
}

// Thick fiber on a thin barrel, so that a slit holds with few turns on it.
PlanDraft thick_draft() {
  PlanDraft thick = draft();
  thick.spool.barrel_diameter_mm = 40.0;
  thick.spool.flange_diameter_mm = 200.0;
  thick.spool.inside_width_mm = 60.0;
  thick.fiber.diameter_mm = 5.0;
  thick.fiber.friction = 0.8;
  thick.traverse.pitch_mm = 5.0;
  return thick;
}

// A turn on the barrel, lifted over `covered` stations from `from` on as by something beneath, and one that was laid later below it.
Build loop_under_bridge(const Plan& plan, int bridges) {
  const double r0 = 0.5 * (plan.spool().barrel_diameter_mm + plan.fiber().diameter_mm);
  const auto bridge = [=](double turn) {
    const int station = static_cast<int>(std::lround(turn * stations)) % stations;
    const bool first = station >= 10 && station < 13, second = bridges == 2 && station >= 40 && station < 43;
    return Place{10.0, first || second ? r0 + 1.2 : r0, Support::barrel};
  };
  const auto below = [=](double turn) {
    const int station = static_cast<int>(std::lround(turn * stations)) % stations;
    const bool under = (station >= 10 && station < 13) || (bridges == 2 && station >= 40 && station < 43);
    return Place{under ? 10.3 : 12.0, r0, Support::barrel};
  };
  return BuildMaker(plan, stations).stroke(1, 1, bridge).stroke(-1, 1, below).finish();
}

}  // namespace

TEST_CASE("a turn pressed between two is held as statics says, by its lean and by what lay on it") {
  const Plan plan = plan_of(thick_draft());
  const double d = 5.0, apart = 1.99 * d, lean = std::asin(0.995);
  const double radius = 20.0 + 0.5 * d + std::sqrt(d * d - 0.25 * apart * apart);
  const double side = 0.5;  // 1 - cos 60 degrees
  for (const int above : {6, 9}) {
    const PayoffRun run = paid_off(plan, pressed_between_two(plan, apart, above));
    // Turns straight on it stand d apart; a nested layer rises by .87 d.
    const double slit = slit_multiple({lean, above / 0.87, radius}, d, 0.8, side);
    REQUIRE(slit > 1.3);
    REQUIRE(run.hardest);
    CHECK(run.hardest->by == HeldBy::in_slit);
    CHECK(run.hardest->layer == 2);
    CHECK(run.hardest->turn == Approx(2.0).margin(1.0));
    const double aside = bend_multiple(std::atan((30.0 - (2.0 * d + 0.5 * apart)) / 1200.0), 0.8);
    CHECK(run.greatest == Approx(slit * aside).epsilon(1e-4));
    CHECK(nodes_held_by(run, HeldBy::in_slit) == stations);
  }
}

TEST_CASE("two that stand nearer carry a turn openly, and nothing holds it") {
  const Plan plan = plan_of(thick_draft());
  // Friction .8 jams from a lean of 51.3 degrees on: 1.56 d.
  CHECK(nodes_held_by(paid_off(plan, pressed_between_two(plan, 1.50 * 5.0, 6)), HeldBy::in_slit) == 0);
  CHECK(nodes_held_by(paid_off(plan, pressed_between_two(plan, 1.99 * 5.0, 6)), HeldBy::in_slit) == stations);
}

TEST_CASE("a flange is one side of a slit, and the turn that lies in a groove is in none") {
  const Plan plan = plan_of(thick_draft());
  const double d = 5.0, r0 = 22.5, lean = 1.4;
  // A turn on the barrel beside the flange, so far off that one between flange and turn leans by `lean` on the turn.
  const Build beside_flange = BuildMaker(plan, stations)
                                  .stroke(1, 1,
                                          [=](double) {
                                            return Place{0.5 * d + d * std::sin(lean), r0, Support::barrel};
                                          })
                                  .stroke(-1, 1,
                                          [=](double) {
                                            return Place{0.5 * d, r0 + d * std::cos(lean), Support::valley};
                                          })
                                  .finish();
  Progress progress;
  const Unwinding found = unwind(plan, beside_flange, DrawOff::side, progress);
  REQUIRE(found.slits.size() == stations);
  CHECK(found.slits.front().node == stations);
  CHECK(found.slits.front().lean_rad == Approx(0.5 * (0.5 * pi + lean)).epsilon(1e-6));
  CHECK(found.slits.front().turns_above == Approx(0.0).margin(1e-6));
  // Nested layers lean by 30 degrees, with neighbours at their equator, and by 60 between a flange and a turn: at friction .5
  // (63.4) none jams, at .6 (59.0) those at the flange do.
  PlanDraft layers = draft();
  const Build build = nested(plan_of(layers), stations, 3, 8, 1.0);
  CHECK(unwind(plan_of(layers), build, DrawOff::side, progress).slits.empty());
  layers.fiber.friction = 0.6;
  CHECK(unwind(plan_of(layers), build, DrawOff::side, progress).slits.size() == stations);
}

TEST_CASE("a loop under a bridge has to be drawn through beneath it, half a turn around") {
  const Plan plan = plan_of(draft());
  const Build build = loop_under_bridge(plan, 1);
  const PayoffRun run = paid_off(plan, build);
  const double aside = bend_multiple(std::atan(0.05 / 410.0), 0.5);
  CHECK(run.greatest == Approx(bend_multiple(pi, 0.5)).epsilon(1e-3));
  CHECK(run.greatest == Approx(bend_multiple(pi, 0.5) * aside).epsilon(1e-6));
  REQUIRE(run.catches.size() == 1);
  const PayoffCatch& caught = run.catches.front();
  CHECK(caught.by == HeldBy::under_turns);
  CHECK(caught.first_node == stations + 10);
  CHECK(caught.end_node == stations + 13);
  CHECK(caught.angle_deg == Approx(50.0));
  CHECK(caught.layer == 2);
  CHECK(caught.severity == FindingSeverity::grave);
  const double until_there = FiberLine(build).at(stations + 10);
  CHECK(caught.from_outer_end_mm == Approx(build.length_mm - until_there));
  const std::string line = payoff_line(run, build.length_mm), words = sentence_of(caught, plan);
  CHECK(line.find("catches in 1 place,") != std::string::npos);
  CHECK(line.find("4.81 times") != std::string::npos);
  CHECK(words.find("an earlier turn lies over it") != std::string::npos);
  CHECK(words.find("layer 2") != std::string::npos);
  CHECK(run.multiples[stations + 9] < 1.01);
  CHECK(run.multiples[stations + 13] < 1.01);
}

TEST_CASE("under two bridges in a turn the inner place is held by both") {
  const Plan plan = plan_of(draft());
  const PayoffRun run = paid_off(plan, loop_under_bridge(plan, 2));
  REQUIRE(run.catches.size() == 2);
  CHECK(run.catches[0].multiple == Approx(bend_multiple(2.0 * pi, 0.5)).epsilon(1e-3));
  CHECK(run.catches[0].angle_deg == Approx(50.0));
  CHECK(run.catches[1].multiple == Approx(bend_multiple(pi, 0.5)).epsilon(1e-3));
  CHECK(run.catches[1].angle_deg == Approx(200.0));
}

TEST_CASE("a wind that lies open is free, but for the way to the eye") {
  const Plan plan = plan_of(draft());
  const Build build = helix(plan, stations, 0.5, 1.5, 12.0);
  const PayoffRun run = paid_off(plan, build, {DrawOff::side, 100.0, true});
  CHECK(run.catch_count == 0);
  // Led aside most at the flange: atan(half the width / the eye's distance).
  CHECK(run.greatest == Approx(bend_multiple(std::atan((10.25 - 0.5) / 100.0), 0.5)).epsilon(1e-6));
  // Farther off it is led aside less.
  CHECK(paid_off(plan, build, {DrawOff::side, 1000.0, true}).greatest < run.greatest);
  CHECK(nodes_held_by(paid_off(plan, build, {DrawOff::over_right, {}, true}), HeldBy::free) ==
        static_cast<int>(build.nodes.size()));
}

TEST_CASE("drawn over the end from which its layer came, a turn bends over its neighbour") {
  PlanDraft low = draft();
  low.spool.flange_diameter_mm = 104.0;
  const Plan plan = plan_of(low);
  double before = 10.0;
  for (const double pitch : {1.0, 1.2, 1.5, 1.9}) {
    const Build build = helix(plan, stations, 0.5, pitch, 8.0);
    const PayoffRun left = paid_off(plan, build, {DrawOff::over_left, {}, true});
    // At most asin(d/p) of bend; the rim, which stands high over one layer, takes off the rest.
    CHECK(left.greatest < bend_multiple(std::asin(1.0 / pitch), 0.5));
    CHECK(left.greatest > 1.05);
    CHECK(left.greatest < before);
    before = left.greatest;
  }
}

TEST_CASE("where the plan holds the fiber, friction is assumed, and said to be") {
  PlanDraft held = draft();
  held.fiber.friction = Fiber::held;
  const Plan plan = plan_of(held);
  const PayoffRun run = paid_off(plan, helix(plan, stations, 0.5, 1.0, 10.0));
  CHECK(run.friction == held_counts_as);
  CHECK(run.friction_assumed);
  CHECK(basis_of(run).find("assumed") != std::string::npos);
  CHECK(payoff_line(run, 1.0).find("nothing catches") != std::string::npos);
}

TEST_CASE("stopped, it returns at once") {
  const Plan plan = plan_of(draft());
  Progress progress;
  progress.cancel();
  CHECK(pay_off(plan, helix(plan, stations, 0.5, 1.0, 10.0), {}, progress).layers.empty());
}

TEST_CASE("catches are counted by how severe they are, and told so") {
  // Under a turn the force is e^(mu pi), 4.81 at friction .5: 3.81 above that of winding.
  PlanDraft strict = draft(), mild = draft();
  mild.limits.payoff_force = 4.5;  // 3.81 is a little over 3.5
  const PayoffRun far_beyond = paid_off(plan_of(strict), loop_under_bridge(plan_of(strict), 1));
  const PayoffRun near = paid_off(plan_of(mild), loop_under_bridge(plan_of(mild), 1));
  CHECK(far_beyond.of_severity == std::array{0, 0, 1});
  CHECK(near.of_severity == std::array{0, 1, 0});
  CHECK(count_words(far_beyond) == "1 catch: 1 grave");
  CHECK(count_words(near) == "1 catch: 1 worth a look");
  CHECK(near.catches.front().severity == FindingSeverity::worth_a_look);
  PayoffRun both = far_beyond;
  both.catch_count = 1'203;
  both.of_severity = {0, 3, 1'200};
  CHECK(count_words(both) == "1,203 catches: 1,200 grave, 3 worth a look");
  CHECK(count_words(PayoffRun{}) == "no catch");
}
