#include <catch2/catch.hpp>

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

// A continuous wind from x = left to x = right and back at this pitch, radius growing with the layers.
Build zigzag(const Plan& plan, int stations, double left, double right, double pitch, int layers,
             double last_share = 1.0) {
  BuildMaker maker(plan, stations);
  const double turns = (right - left) / pitch;
  for (int layer = 0; layer < layers; ++layer) {
    const bool rightward = layer % 2 == 0;
    const double share = layer + 1 == layers ? last_share : 1.0;
    maker.stroke(rightward ? 1 : -1, turns * share, [=](double turn) {
      return Place{rightward ? left + pitch * turn : right - pitch * turn, 50.5 + 0.8 * layer,
                   layer == 0 ? Support::barrel : Support::turn};
    });
  }
  return maker.finish();
}

PlanDraft draft_of_pitch(double pitch) {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = 40.0;
  wide.traverse.pitch_mm = pitch;
  return wide;
}

}  // namespace

TEST_CASE("a wind that turns at the flanges has no flange gap, at any pitch") {
  for (const double pitch : {1.02, 1.3, 3.0, 10.0}) {
    INFO("pitch " << pitch);
    const Plan plan = plan_of(draft_of_pitch(pitch));
    const Measurements m = measured(plan, zigzag(plan, 360, 0.5, 39.5, pitch, 6));
    CHECK(of_kind(m, FindingKind::flange_gap).empty());
  }
}

TEST_CASE("a wind that turns short of a flange has a gap of that size there") {
  for (const double pitch : {1.02, 3.0}) {
    INFO("pitch " << pitch);
    const Plan plan = plan_of(draft_of_pitch(pitch));
    const Measurements m = measured(plan, zigzag(plan, 360, 0.5, 39.5 - 0.9, pitch, 6));
    const auto gaps = of_kind(m, FindingKind::flange_gap);
    REQUIRE(gaps.size() == 1);
    const Finding& gap = gaps.front();
    REQUIRE(gap.side);
    CHECK(*gap.side == Side::right);
    // Stations are apart by pitch/360: the reversal may fall between two.
    CHECK(gap.size_mm == Approx(0.9).margin(pitch / 360.0));
    CHECK(gap.size_d == Approx(0.9).margin(pitch / 360.0));
    CHECK(gap.layer == 1);
    CHECK(gap.last_layer == 5);
    CHECK(gap.occurrences == 3);
    CHECK(gap.angle_deg[1] - gap.angle_deg[0] == Approx(360.0));
    CHECK(gap.x_mm[1] == Approx(40.0).margin(1e-4));
    CHECK(says(gap, "right flange"));
    CHECK(says(gap, "3 times in layers 1 to 5"));
  }
}

TEST_CASE("short of a flange by less than the limit is no finding") {
  const Plan plan = plan_of(draft_of_pitch(1.02));
  const Measurements m = measured(plan, zigzag(plan, 360, 0.5, 39.5 - 0.45, 1.02, 6));
  CHECK(of_kind(m, FindingKind::flange_gap).empty());
}

TEST_CASE("the start of the wind is judged as a reversal of the first layer") {
  const Plan plan = plan_of(draft_of_pitch(1.02));
  const Measurements m = measured(plan, zigzag(plan, 180, 0.5 + 0.8, 39.5, 1.02, 1));
  const auto gaps = of_kind(m, FindingKind::flange_gap);
  REQUIRE(gaps.size() == 1);
  CHECK(*gaps.front().side == Side::left);
  CHECK(gaps.front().layer == 1);
  CHECK(gaps.front().size_mm == Approx(0.8).margin(1e-4));
  // Its fiber, all round the first turn, counts as beside a gap.
  CHECK(m.layers[0].gap_length_mm == Approx(2.0 * std::numbers::pi * 50.5).epsilon(1e-6));
}

TEST_CASE("what the last, incomplete stroke has not reached is not judged") {
  const Plan plan = plan_of(draft_of_pitch(1.02));
  for (const double share : {0.01, 0.3, 0.97}) {
    INFO("share " << share);
    const Measurements m = measured(plan, zigzag(plan, 180, 0.5, 39.5, 1.02, 3, share));
    CHECK(m.findings.empty());
  }
}

TEST_CASE("run-out opens a gap over part of the angle only") {
  PlanDraft wobbling = draft_of_pitch(1.02);
  wobbling.spool.flange_runout_mm = 4.0;  // at the rim, radius 80: the face moves by 1.26 mm at radius 50.5
  const Plan plan = plan_of(wobbling);
  const Measurements m = measured(plan, zigzag(plan, 360, 0.5, 39.5, 1.02, 4));
  const auto gaps = of_kind(m, FindingKind::flange_gap);
  REQUIRE(gaps.size() == 2);
  for (const Finding& gap : gaps) {
    const double span = gap.angle_deg[1] - gap.angle_deg[0];
    CHECK(span > 60.0);
    CHECK(span < 250.0);
    CHECK(gap.size_mm > 0.5);
    CHECK(gap.size_mm <= Approx(2.0 * 53.0 / 80.0));
    // Both faces open where cos(theta) is negative.
    const double middle = 0.5 * (gap.angle_deg[0] + gap.angle_deg[1]);
    CHECK(middle > 90.0);
    CHECK(middle < 270.0);
  }
}
