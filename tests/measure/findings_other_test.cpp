#include <catch2/catch.hpp>

#include "lay/lay.h"
#include "plan/plan_file.h"

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

Build with_bridge(const Plan& plan, int stations, double from_turn, double to_turn) {
  BuildMaker maker(plan, stations);
  maker.stroke(1, 20, [=](double turn) {
    const bool free = turn > from_turn - 1e-6 && turn < to_turn - 1e-6;
    return Place{0.5 + std::floor(turn + 1e-9), 50.5, free ? Support::none : Support::barrel};
  });
  return maker.finish();
}

// Coarse zigzag of so many turns per stroke, held where it lands, so that it rises by .5 d per stroke.
Build cross_wound(const Plan& plan, double turns_per_stroke, int strokes) {
  BuildMaker maker(plan, 120);
  for (int s = 0; s < strokes; ++s) {
    const double pitch = 99.0 / turns_per_stroke;
    maker.stroke(s % 2 == 0 ? 1 : -1, turns_per_stroke, [=](double turn) {
      return Place{s % 2 == 0 ? 0.5 + pitch * turn : 99.5 - pitch * turn, 50.5 + 0.5 * s};
    });
  }
  return maker.finish();
}

PlanDraft cross_draft() {
  PlanDraft cross = draft();
  cross.spool.inside_width_mm = 100.0;
  cross.traverse.pitch_mm = 10.0;
  cross.limits.pile_up_d = 100.0;
  return cross;
}

}  // namespace

// Depth of the hole: R phi^2 / 8. Limit 2 d: phi = sqrt(16 / 50.5) = .563 rad = 32.3 deg.
TEST_CASE("fiber that hangs free over a hole deeper than two diameters is a bridge") {
  const Plan plan = plan_of(draft());
  for (const int stations : {120, 480}) {
    const auto bridges =
        of_kind(measured(plan, with_bridge(plan, stations, 5.0, 5.0 + 60.0 / 360.0)), FindingKind::bridge);
    REQUIRE(bridges.size() == 1);
    CHECK(bridges.front().size_mm == Approx(50.5 * std::pow(pi / 3.0, 2) / 8.0).epsilon(1e-3));
    CHECK(bridges.front().angle_deg[0] == Approx(0.0).margin(1e-9));
    CHECK(bridges.front().angle_deg[1] == Approx(60.0));
    CHECK(bridges.front().turn == Approx(5.0));
    CHECK(says(bridges.front(), "60 degrees"));
  }
  CHECK(of_kind(measured(plan, with_bridge(plan, 120, 5.0, 5.0 + 30.0 / 360.0)), FindingKind::bridge).empty());
}

TEST_CASE("a bridge that goes on into the next stroke is one bridge") {
  const Plan plan = plan_of(draft());
  BuildMaker maker(plan, 120);
  const auto support = [](bool free) { return free ? Support::none : Support::turn; };
  maker.stroke(1, 20, [=](double turn) {
    return Place{0.5 + std::floor(turn + 1e-9), 50.5, support(turn > 20.0 - 30.5 / 360.0)};
  });
  maker.stroke(-1, 10, [=](double turn) {
    return Place{20.0 - std::floor(turn + 1e-9), 51.4, support(turn < 29.5 / 360.0)};
  });
  const auto bridges = of_kind(measured(plan, maker.finish()), FindingKind::bridge);
  REQUIRE(bridges.size() == 1);
  CHECK(bridges.front().layer == 1);
  CHECK(bridges.front().occurrences == 1);
  CHECK(says(bridges.front(), "60 degrees"));
}

TEST_CASE("strokes that lie on one another are a ribbon") {
  const Plan plan = plan_of(cross_draft());
  // 10 turns per double stroke: each on the last. Stacks of strokes 1, 3, 5, 7, 9 and 2, 4, 6, 8, 10: five turns, a
  // rise of one diameter from each to the next.
  const auto whole = of_kind(measured(plan, cross_wound(plan, 5.0, 10)), FindingKind::ribbon);
  REQUIRE(whole.size() == 1);
  CHECK(whole.front().size_mm == Approx(5.0).margin(1e-3));
  CHECK(whole.front().layer == 5);
  CHECK(whole.front().last_layer == 10);
  CHECK(says(whole.front(), "10.00 turns"));
  CHECK(says(whole.front(), "near to 10 "));
  // 10 1/2 and 10 1/3: every second and third double stroke.
  const auto half = of_kind(measured(plan, cross_wound(plan, 5.25, 20)), FindingKind::ribbon);
  REQUIRE(half.size() == 1);
  CHECK(says(half.front(), "near to 10 1/2 "));
  const auto third = of_kind(measured(plan, cross_wound(plan, 5.0 + 1.0 / 6.0, 30)), FindingKind::ribbon);
  REQUIRE(third.size() == 1);
  CHECK(says(third.front(), "near to 10 1/3 "));
}

// Round fiber does not stay on round fiber: what a whole winding ratio leaves is a crowd beside its line.
TEST_CASE("a whole winding ratio crowds the wind into ribbons, a ratio that is none does not") {
  const std::string sample = std::string(LAYWRIGHT_SOURCE_DIR) + "/samples/whole-ratio.lay.toml";
  PlanDraft ribbon = read_plan(read_plan_text(sample).value(), sample).value();
  const auto ribbons_of = [](const PlanDraft& plan_draft) {
    const Plan plan = plan_of(plan_draft);
    Progress progress;
    return of_kind(measured(plan, lay(plan, {}, progress).value()), FindingKind::ribbon);
  };
  const auto found = ribbons_of(ribbon);
  REQUIRE(found.size() == 1);
  CHECK(found.front().occurrences > 20);
  CHECK(found.front().size_d > 1.0);
  CHECK(says(found.front(), "15.00 turns"));
  ribbon.traverse.pitch_mm = 19.85;  // 15.11, no simple fraction
  CHECK(ribbons_of(ribbon).empty());
  ribbon.traverse.pitch_mm = 19.3;
  CHECK(ribbons_of(ribbon).empty());
}

TEST_CASE("strokes that lie side by side are no ribbon") {
  const Plan plan = plan_of(cross_draft());
  // A shift by one diameter per double stroke lays them side by side: 1 mm of a pitch of 19.6.
  CHECK(of_kind(measured(plan, cross_wound(plan, 5.0 + 0.5 / 19.0, 20)), FindingKind::ribbon).empty());
  CHECK(of_kind(measured(plan, cross_wound(plan, 5.073, 20)), FindingKind::ribbon).empty());
}

TEST_CASE("fine pitch is never a ribbon") {
  const Plan plan = plan_of(draft());
  CHECK(of_kind(measured(plan, nested(plan, 60, 8, 20, 1.0)), FindingKind::ribbon).empty());
}

TEST_CASE("fiber beyond the rim is a rim overrun and comes first") {
  PlanDraft low = draft();
  low.spool.flange_diameter_mm = 105.0;
  const Plan plan = plan_of(low);
  const Measurements m = measured(plan, nested(plan, 60, 4, 20, 1.0));
  const double beyond = 50.5 + 3.0 * std::sqrt(0.75) + 0.5 - 52.5;
  REQUIRE_FALSE(m.findings.empty());
  CHECK(m.findings.front().kind == FindingKind::rim_overrun);
  CHECK(m.findings.front().layer == 3);
  CHECK(m.findings.front().turn == Approx(40.0));
  CHECK(m.findings.front().size_mm == Approx(beyond).margin(1e-5));
  CHECK(m.rim_clearance_mm == Approx(-beyond).margin(1e-5));
  CHECK(of_kind(measured(plan_of(draft()), nested(plan, 60, 4, 20, 1.0)), FindingKind::rim_overrun).empty());
}

TEST_CASE("a wind that stopped at the rim says so") {
  const Plan plan = plan_of(draft());
  Build build = nested(plan, 60, 4, 20, 1.0);
  build.length_mm = 26123.0;
  build.stopped_by = StopReason::rim;
  const auto found = of_kind(measured(plan, build), FindingKind::rim_overrun);
  REQUIRE(found.size() == 1);
  CHECK(found.front().layer == 4);
  CHECK(found.front().size_mm == 0.0);
  CHECK(says(found.front(), "stopped after 26.1 m"));
}
