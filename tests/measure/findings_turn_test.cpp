#include <catch2/catch.hpp>

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

constexpr double rise = 0.8660254;

// Three nested layers; one stretch of a turn of the third may be moved.
Build with_odd_turn(const Plan& plan, int stations, double by, bool rides_up) {
  BuildMaker maker(plan, stations);
  for (int layer = 0; layer < 3; ++layer) {
    const bool right = layer % 2 == 0;
    maker.stroke(right ? 1 : -1, 20, [=](double turn) {
      const double step = std::floor(turn + 1e-9);
      const bool odd = layer == 2 && turn > 7.25 - 1e-6 && turn < 7.75 - 1e-6;
      return Place{right ? 0.5 + step : 20.0 - step, 50.5 + rise * layer + (odd ? by : 0.0), Support::valley,
                   odd && rides_up};
    });
  }
  return maker.finish(60.0);
}

}  // namespace

TEST_CASE("a turn that lies a layer too low is a dropped turn") {
  const Plan plan = plan_of(draft());
  for (const int stations : {60, 240}) {
    const Measurements m = measured(plan, with_odd_turn(plan, stations, -rise, false));
    REQUIRE(m.findings.size() == 1);
    const Finding& turn = m.findings.front();
    CHECK(turn.kind == FindingKind::dropped_turn);
    CHECK(turn.layer == 3);
    CHECK(turn.occurrences == 1);
    CHECK(turn.turn == Approx(47.25));
    CHECK(turn.size_mm == Approx(rise).margin(1e-4));
    CHECK(turn.angle_deg[0] == Approx(90.0));
    CHECK(turn.angle_deg[1] == Approx(270.0));
    CHECK(turn.x_mm[0] == Approx(7.0).margin(1e-4));
    CHECK(turn.x_mm[1] == Approx(8.0).margin(1e-4));
    CHECK(says(turn, "7.5 mm from the left flange"));
  }
}

TEST_CASE("a turn that is low by less than a layer has not dropped") {
  const Plan plan = plan_of(draft());
  CHECK(measured(plan, with_odd_turn(plan, 120, -0.7, false)).findings.empty());
}

TEST_CASE("a layer that slopes has no dropped turns") {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = 400.0;
  wide.limits.pile_up_d = 50.0;
  const Plan plan = plan_of(wide);
  BuildMaker maker(plan, 24);
  maker.stroke(1, 400, [](double turn) { return Place{0.5 + std::floor(turn + 1e-9), 50.5, Support::barrel}; });
  // Ten diameters up over the width.
  maker.stroke(-1, 399, [](double turn) {
    const double x = 399.0 - std::floor(turn + 1e-9);
    return Place{x, 51.4 + x / 40.0};
  });
  CHECK(of_kind(measured(plan, maker.finish()), FindingKind::dropped_turn).empty());
}

TEST_CASE("a layer on a steep conical barrel has no dropped turns") {
  PlanDraft conical = draft();
  conical.spool.barrel_taper_mm = 12.0;
  const Plan plan = plan_of(conical);
  BuildMaker maker(plan, 60);
  const auto at = [](double x, double r) { return Place{x, r + 6.0 * x / 20.5}; };
  maker.stroke(1, 20, [=](double turn) { return at(0.5 + std::floor(turn + 1e-9), 50.6); });
  maker.stroke(-1, 20, [=](double turn) { return at(20.0 - std::floor(turn + 1e-9), 51.5); });
  CHECK(measured(plan, maker.finish(40.0)).findings.empty());
}

TEST_CASE("open turns of a coarse pitch cannot drop") {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = 100.0;
  wide.traverse.pitch_mm = 5.0;
  const Plan plan = plan_of(wide);
  BuildMaker maker(plan, 60);
  maker.stroke(1, 20, [](double turn) { return Place{0.5 + 4.95 * turn, 50.5, Support::barrel}; });
  maker.stroke(-1, 20, [](double turn) { return Place{99.5 - 4.95 * turn, turn < 3.0 ? 50.5 : 51.5}; });
  CHECK(of_kind(measured(plan, maker.finish()), FindingKind::dropped_turn).empty());
}

TEST_CASE("a turn on the back of its neighbour is a ride-up") {
  const Plan plan = plan_of(draft());
  const Measurements m = measured(plan, with_odd_turn(plan, 120, 0.9, true));
  REQUIRE(m.findings.size() == 1);
  const Finding& turn = m.findings.front();
  CHECK(turn.kind == FindingKind::ride_up);
  CHECK(turn.layer == 3);
  CHECK(turn.size_mm == Approx(0.9).margin(1e-4));
  CHECK(turn.angle_deg[0] == Approx(90.0));
  CHECK(turn.angle_deg[1] == Approx(270.0));
  CHECK(measured(plan, with_odd_turn(plan, 120, 0.9, false)).findings.empty());
}
