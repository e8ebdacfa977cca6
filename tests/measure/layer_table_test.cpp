#include <catch2/catch.hpp>

#include "measure/measurements.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {}  // namespace

// Closed form: parallel-turn spool, barrel 100, width 20.5, d 1, 20 turns in each of 5 nested layers.
TEST_CASE("a nested parallel-turn build has the layer table of its geometry") {
  const Plan plan = plan_of(draft());
  const Measurements m = measured(plan, nested(plan, 120, 5, 20, 1.0));
  REQUIRE(m.layers.size() == 5);
  double length = 0.0;
  for (int i = 0; i < 5; ++i) {
    const LayerRow& row = m.layers[static_cast<std::size_t>(i)];
    INFO("layer " << row.layer);
    CHECK(row.layer == i + 1);
    CHECK(row.direction == (i % 2 == 0 ? 1 : -1));
    CHECK(row.turns == Approx(20.0).margin(1e-9));
    CHECK(row.mean_diameter_mm == Approx(101.0 + i * std::sqrt(3.0)).margin(1e-6));
    CHECK(row.gap_length_mm == 0.0);
    CHECK(row.bridged_share == 0.0);
    // Where this layer steps to the left the layer below steps to the right: two turns crossed at each step.
    CHECK(row.crossings == (i == 0 ? 0 : 38));
    if (i == 0) CHECK_FALSE(row.mean_rise_d);
    if (i > 0) CHECK(*row.mean_rise_d == Approx(std::sqrt(0.75)).margin(1e-6));
    length += row.length_mm;
  }
  CHECK(m.layers[4].mean_diameter_mm == Approx(107.9282).margin(1e-4));
  // 32.8185 m, and the steps from turn to turn within one station's angle.
  CHECK(length == Approx(32818.5).epsilon(2e-3));
}

TEST_CASE("rise at a pitch p is sqrt(d^2 - p^2/4)") {
  for (const double pitch : {1.0, 1.05, 1.1, 1.2}) {
    PlanDraft wide = draft();
    wide.spool.inside_width_mm = 20.5 * pitch;
    const Plan plan = plan_of(wide);
    const Measurements m = measured(plan, nested(plan, 60, 3, 20, pitch));
    CHECK(*m.layers[2].mean_rise_d == Approx(std::sqrt(1.0 - pitch * pitch / 4.0)).margin(1e-6));
  }
}

// Closed form: mean of sqrt(1 - u^2) over one pitch = d, uniform phase (NEMA reel method page gives .95).
TEST_CASE("fiber held where it crosses a close-laid layer rises by .9566 d in the mean") {
  const Plan plan = plan_of(draft());
  const double r0 = 50.5;
  BuildMaker maker(plan, 360);
  maker.stroke(1, 20, [=](double turn) { return Place{0.5 + turn, r0, Support::barrel}; });
  // Back at the same pitch: relative to the layer below it moves two turns per turn.
  maker.stroke(-1, 20, [=](double turn) {
    const double x = 20.5 - turn;
    const double strand = 0.5 + (turn - std::floor(turn));
    const double off = std::remainder(x - strand, 1.0);
    return Place{x, r0 + std::sqrt(1.0 - off * off)};
  });
  const Measurements m = measured(plan, maker.finish());
  CHECK(*m.layers[1].mean_rise_d == Approx(0.9566).margin(2e-4));
  // A helix of the other hand crosses two turns per turn (wire rope drum handbook page, wirerope.net); at the
  // flange, where it begins beside the last turn, it may lack one.
  CHECK(m.layers[1].crossings >= 39);
  CHECK(m.layers[1].crossings <= 40);
}

TEST_CASE("lying on top of a strand and trembling there is not crossing it") {
  const Plan plan = plan_of(draft());
  BuildMaker maker(plan, 120);
  maker.stroke(1, 10, [](double turn) { return Place{0.5 + 2.0 * std::floor(turn + 1e-9), 50.5, Support::barrel}; });
  maker.stroke(-1, 9, [](double turn) {
    const double tremble = 0.05 * std::sin(40.0 * turn);
    return Place{18.5 - 2.0 * std::floor(turn + 1e-9) + tremble, 51.5};
  });
  const Measurements m = measured(plan, maker.finish());
  // Two strands at each of the eight steps, which go against those of the layer below; none of the trembling.
  CHECK(m.layers[1].crossings == 16);
}

// Helix L = N sqrt((pi D)^2 + P^2): D 20, P 5, one turn 63.0305 (Dr Math 55156).
TEST_CASE("the length of a helix is that of its developed straight line") {
  PlanDraft small = draft();
  small.spool.barrel_diameter_mm = 19.0;
  small.spool.flange_diameter_mm = 60.0;
  const Plan plan = plan_of(small);
  BuildMaker maker(plan, 90);
  maker.stroke(1, 4.5, [](double turn) { return Place{-1.0 + 5.0 * turn, 10.0, Support::barrel}; });
  for (const double turns : {1.0, 2.25, 3.123}) {
    const Build build = maker.finish(turns);
    CHECK(build.length_mm == Approx(turns * 63.0305).epsilon(1e-6));
    const Measurements m = measured(plan, build);
    CHECK(m.layers[0].turns == Approx(turns));
    CHECK(m.layers[0].length_mm == Approx(build.length_mm).epsilon(1e-12));
  }
}

TEST_CASE("gap length is the fiber beside open gaps, whatever the station count") {
  const Plan plan = plan_of(draft());
  for (const int stations : {60, 120, 480}) {
    BuildMaker maker(plan, stations);
    // Turn 9 to 10: 1.8 apart over the first half turn, 1.2 over the other; turn 10 to 11: .9, then 1.5. Only
    // the first is more than 1.5 d from its neighbour, one diameter and the limit.
    maker.stroke(1, 20, [](double turn) {
      const double step = std::floor(turn + 1e-9);
      const bool near = step > 9.5 && step < 10.5 && turn - step >= 0.5 - 1e-9;
      return Place{0.5 + step * 0.9 + (step > 9.5 ? 0.9 : 0.0) - (near ? 0.6 : 0.0), 50.5, Support::barrel};
    });
    const Measurements m = measured(plan, maker.finish());
    INFO(stations << " stations");
    CHECK(m.layers[0].gap_length_mm == Approx(0.5 * 2.0 * pi * 50.5).epsilon(1e-3));
  }
}

TEST_CASE("bridged share is the share of length that nothing carries") {
  const Plan plan = plan_of(draft());
  BuildMaker maker(plan, 200);
  maker.stroke(1, 10, [](double turn) {
    return Place{0.5 + turn, 50.5, turn >= 2.0 && turn < 4.5 ? Support::none : Support::barrel};
  });
  CHECK(measured(plan, maker.finish()).layers[0].bridged_share == Approx(0.25).margin(1e-9));
}
