#include <catch2/catch.hpp>

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

// Straight turns at pitch 1.02 that leave one gap of this width after the tenth turn, between two angles.
Build with_gap(const Plan& plan, int stations, double gap, double from_deg, double to_deg) {
  BuildMaker maker(plan, stations);
  maker.stroke(1, 15, [=](double turn) {
    const double step = std::floor(turn + 1e-9);
    const double angle = 360.0 * (turn - step);
    const bool open = step > 9.5 && angle > from_deg - 1e-6 && angle < to_deg - 1e-6;
    // Where it is open, all that follows stands further right.
    return Place{0.5 + 1.02 * step + (open ? gap - 0.02 : 0.0), 50.5, Support::barrel};
  });
  return maker.finish();
}

}  // namespace

TEST_CASE("a gap is found with its size, place and angle, at any station count") {
  const Plan plan = plan_of(draft());
  for (const int stations : {72, 144, 720}) {
    INFO(stations << " stations");
    const auto gaps = of_kind(measured(plan, with_gap(plan, stations, 0.8, 90.0, 180.0)), FindingKind::gap);
    REQUIRE(gaps.size() == 1);
    const Finding& gap = gaps.front();
    CHECK(gap.layer == 1);
    CHECK(gap.last_layer == 1);
    CHECK(gap.occurrences == 1);
    CHECK(gap.size_mm == Approx(0.8).margin(1e-5));
    CHECK(gap.size_d == Approx(0.8).margin(1e-5));
    CHECK(gap.turn == Approx(9.25).margin(1e-9));
    CHECK(gap.angle_deg[0] == Approx(90.0));
    CHECK(gap.angle_deg[1] == Approx(180.0));
    // Along the steps from turn to turn the fiber is longer.
    CHECK(gap.length_mm[0] == Approx(9.25 * 2.0 * pi * 50.5).epsilon(4e-3));
    CHECK(gap.length_mm[1] == Approx(9.5 * 2.0 * pi * 50.5).epsilon(4e-3));
    // Between the centres of the two turns.
    CHECK(gap.x_mm[0] == Approx(0.5 + 9 * 1.02).margin(1e-5));
    CHECK(gap.x_mm[1] == Approx(0.5 + 9 * 1.02 + 1.8).margin(1e-5));
    CHECK_FALSE(gap.side);
    CHECK(says(gap, "layer 1"));
    CHECK(says(gap, "0.80 mm"));
    CHECK(says(gap, "over 90 degrees"));
  }
}

TEST_CASE("a gap within the limit is no finding, and the limit is the plan's") {
  PlanDraft strict = draft();
  strict.limits.gap_d = 0.3;
  const Plan plan = plan_of(draft());
  const Build build = with_gap(plan, 90, 0.45, 0.0, 360.0);
  CHECK(of_kind(measured(plan, build), FindingKind::gap).empty());
  CHECK(of_kind(measured(plan_of(strict), build), FindingKind::gap).size() == 1);
}

TEST_CASE("a gap that a later turn of the same layer fills is none") {
  const Plan plan = plan_of(draft());
  BuildMaker maker(plan, 90);
  // The fourth turn leaps over two places, the fifth and sixth come back to fill them.
  const double places[] = {0.5, 1.5, 2.5, 5.5, 3.5, 4.5, 6.5, 7.5};
  maker.stroke(1, 8, [&](double turn) {
    return Place{places[static_cast<int>(turn + 1e-9)], 50.5, Support::barrel};
  });
  const Measurements m = measured(plan, maker.finish(8.0));
  CHECK(of_kind(m, FindingKind::gap).empty());
  CHECK(m.layers[0].gap_length_mm == 0.0);
}

TEST_CASE("a gap in the same place of several layers is one finding") {
  const Plan plan = plan_of(draft());
  BuildMaker maker(plan, 90);
  for (int layer = 0; layer < 6; ++layer) {
    maker.stroke(layer % 2 == 0 ? 1 : -1, 15, [=](double turn) {
      const double step = std::floor(turn + 1e-9);
      const double place = 0.5 + 1.02 * step + (step > 6.5 ? 0.7 + 0.1 * layer : 0.0);
      return Place{layer % 2 == 0 ? place : 0.5 + 1.02 * (14 - step) + (step < 7.5 ? 0.7 + 0.1 * layer : 0.0),
                   50.5 + 0.85 * layer};
    });
  }
  const auto gaps = of_kind(measured(plan, maker.finish(90.0)), FindingKind::gap);
  REQUIRE(gaps.size() == 1);
  CHECK(gaps.front().layer == 1);
  CHECK(gaps.front().last_layer == 6);
  CHECK(gaps.front().occurrences == 6);
  CHECK(gaps.front().size_mm == Approx(0.02 + 0.7 + 0.5).margin(1e-4));
  CHECK(says(gaps.front(), "the worst in layer 6"));
}

TEST_CASE("turns that stand apart because the plan says so are one finding, and the least grave") {
  PlanDraft coarse = draft();
  coarse.spool.inside_width_mm = 60.0;
  coarse.traverse.pitch_mm = 3.0;
  const Plan plan = plan_of(coarse);
  BuildMaker maker(plan, 90);
  for (int layer = 0; layer < 4; ++layer) {
    const double start = layer % 2 == 0 ? 0.5 : 59.5;
    const double sign = layer % 2 == 0 ? 1.0 : -1.0;
    maker.stroke(layer % 2 == 0 ? 1 : -1, 59.0 / 3.0, [=](double turn) {
      return Place{start + sign * 3.0 * turn, 50.5 + 0.3 * layer, layer == 0 ? Support::barrel : Support::turn};
    });
  }
  const Measurements m = measured(plan, maker.finish());
  const auto gaps = of_kind(m, FindingKind::gap);
  REQUIRE(gaps.size() == 1);
  CHECK(gaps.front().size_mm == Approx(2.0).margin(1e-4));
  CHECK(gaps.front().last_layer == 4);
  CHECK(says(gaps.front(), "pitch of the plan"));
  CHECK(m.findings.back().kind == FindingKind::gap);
}
