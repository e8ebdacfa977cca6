#include "pattern/pattern.h"

#include <cmath>
#include <numbers>

#include "crossed_plan.h"
#include "lay/guide.h"
#include "lay/plans.h"

using namespace laywright;
using laywright::testing::crossed::d;
using laywright::testing::crossed::diameter;
using testing::plain_draft;
using testing::sound;

namespace {

// The sample whole-ratio's geometry: from stop to stop 150 mm.
GuideCycle cycle_of(double pitch_mm) { return {150.0, pitch_mm, 0.0, 0.0}; }
// Turns of the spool from the beginning of the third stroke, over so many double strokes, per double stroke: counted on
// the guide of the lay model.
double counted_ratio(const PlanDraft& draft, int double_strokes) {
  Guide guide(sound(draft), 1);
  double angle = 0.0, from = 0.0;
  for (int stroke = 0; stroke < 2 + 2 * double_strokes;) {
    const double piece = guide.advance(1e9).angle;
    if (guide.stroke() != stroke) {
      stroke = guide.stroke();
      if (stroke == 2) from = angle;
      if (stroke == 2 + 2 * double_strokes) break;
    }
    angle += piece;
  }
  return (angle - from) / (2.0 * std::numbers::pi * double_strokes);
}

PlanDraft crossed_draft() {
  PlanDraft draft = plain_draft();
  draft.traverse.pitch_mm = 7.3;
  draft.traverse.left_stop_mm = 2.0;
  draft.traverse.right_stop_mm = 3.5;
  return draft;
}

}  // namespace

TEST_CASE("the winding ratio is what the lay model's guide makes") {
  PlanDraft draft = crossed_draft();
  const double run = 2.0 * (95.0 - 5.5) / 7.3;
  struct Case {
    ReversalKind kind;
    double turns, lost_mm, play_mm, expected;
  };
  // Closed forms: a dwell stands its turns at each of two stops, a ramp of n turns covers what n / 2 do at full pitch.
  const Case cases[] = {{ReversalKind::instant, 0.0, 0.0, 0.0, run},
                        {ReversalKind::dwell, 1.3, 0.0, 0.0, run + 2.6},
                        {ReversalKind::ramp, 3.0, 0.0, 0.0, run + 3.0},
                        {ReversalKind::instant, 0.0, 0.8, 0.0, run + 1.6 / 7.3},
                        {ReversalKind::ramp, 2.0, 0.4, 0.0, run + 2.0 + 0.8 / 7.3},
                        // What a seat in the eye takes from the way is taken up before the eye moves.
                        {ReversalKind::dwell, 0.7, 0.2, 1.1, run + 1.4 + 0.4 / 7.3}};
  for (const Case& one : cases) {
    CAPTURE(static_cast<int>(one.kind), one.turns, one.lost_mm, one.play_mm);
    draft.traverse.reversal = {one.kind, one.turns, one.lost_mm, 0.0};
    draft.traverse.guide_play_mm = one.play_mm;
    const double ratio = winding_ratio(guide_cycle(draft.spool, draft.traverse));
    CHECK(ratio == Approx(one.expected).epsilon(1e-12));
    CHECK(ratio == Approx(counted_ratio(draft, 7)).epsilon(1e-9));
  }
}

TEST_CASE("barrel and free length have no part in the winding ratio of a build") {
  PlanDraft draft = crossed_draft();
  draft.traverse.pitch_mm = 12.0;
  draft.wind.turns = 50.0;
  const double ratio = winding_ratio(guide_cycle(draft.spool, draft.traverse));
  for (const double barrel : {60.0, 150.0}) {
    for (const double free_length : {0.0, 300.0}) {
      CAPTURE(barrel, free_length);
      draft.spool.barrel_diameter_mm = barrel;
      draft.traverse.free_length_mm = free_length;
      const Build build = testing::laid(draft, {1, 0.5});
      const double turns =
          static_cast<double>(build.strokes[2].first_node - build.strokes[0].first_node) / build.stations_per_turn;
      // A stroke's first node is the first after its beginning.
      CHECK(std::abs(turns - ratio) <= 1.001 / build.stations_per_turn);
    }
  }
}

TEST_CASE("the next double stroke lies behind by the pitch times what the ratio exceeds a whole number") {
  // 300 mm / 19.85 mm = 15.113350 turns: 0.113350 * 19.85 mm = 2.25 mm behind, 2.4968 d across at atan(19.85 / (pi 125.9)).
  const Pattern pattern = pattern_of(cycle_of(19.85), d, diameter, 0.1);
  CHECK(pattern.ratio == Approx(15.113350).epsilon(1e-7));
  CHECK(pattern.kind == PatternKind::open);
  CHECK(pattern.nearest.starts == 1);
  CHECK(pattern.nearest.turns == 15);
  CHECK(pattern.nearest.ahead_mm == Approx(-2.25).epsilon(1e-9));
  const double angle = std::atan(19.85 / (std::numbers::pi * 125.9));
  CHECK(pattern.nearest.ahead_d == Approx(-2.5 * std::cos(angle)).epsilon(1e-9));
  // 9 times .113350 is 1.020151: .020151 * 19.85 mm = .4 mm, .44 d.
  CHECK(pattern.returns_after == 9);
}

TEST_CASE("one fiber beside is the gain of textile winding, d / (pi D sin(angle)) turns") {
  // The formula from memory, of textbooks of yarn winding; displaced by just that, the strand lies one fiber beside.
  for (const double pitch : {5.0, 20.0, 90.0}) {
    CAPTURE(pitch);
    const double gain = d / (std::numbers::pi * diameter * std::sin(winding_angle_rad(pitch, diameter)));
    const GuideCycle cycle{0.5 * pitch * (15.0 - gain), pitch, 0.0, 0.0};
    const Pattern pattern = pattern_of(cycle, d, diameter, 0.1);
    CHECK(pattern.nearest.ahead_d == Approx(1.0).epsilon(1e-9));
    CHECK(pattern.kind == PatternKind::close_pattern);
  }
}

TEST_CASE("whole numbers and fractions up to quarters are ribbons, fifths are not") {
  struct Case {
    double ratio;
    int starts;
    long turns;
  };
  for (const Case& one : {Case{15.0, 1, 15}, Case{15.5, 2, 31}, Case{15.0 + 1.0 / 3.0, 3, 46},
                          Case{14.0 + 2.0 / 3.0, 3, 44}, Case{15.25, 4, 61}, Case{14.75, 4, 59}}) {
    CAPTURE(one.ratio);
    const Pattern pattern = pattern_of(cycle_of(300.0 / one.ratio), d, diameter, 0.1);
    CHECK(pattern.kind == PatternKind::ribbon);
    CHECK(pattern.nearest.starts == one.starts);
    CHECK(pattern.nearest.turns == one.turns);
    CHECK(pattern.nearest.ahead_d == Approx(0.0).margin(1e-9));
    CHECK(pattern.returns_after == one.starts);
  }
  const Pattern fifth = pattern_of(cycle_of(300.0 / 15.2), d, diameter, 0.1);
  CHECK(fifth.kind == PatternKind::open);
  CHECK(fifth.returns_after == 5);
}

TEST_CASE("from ribbon through close pattern to open as the displacement grows") {
  // At n = 15 - delta / p the next double stroke lies delta ahead: stroke = p n / 2.
  const double pitch = 20.0, cosine = std::cos(winding_angle_rad(pitch, diameter));
  const auto at = [&](double ahead_d) {
    const double stroke = 0.5 * (15.0 * pitch - ahead_d * d / cosine);
    return pattern_of({stroke, pitch, 0.0, 0.0}, d, diameter, 0.1);
  };
  for (const double side : {1.0, -1.0}) {
    CAPTURE(side);
    CHECK(at(side * 0.99).kind == PatternKind::ribbon);
    CHECK(at(side * 1.0).kind == PatternKind::close_pattern);
    CHECK(at(side * 1.19).kind == PatternKind::close_pattern);
    CHECK(at(side * 1.21).kind == PatternKind::open);
    CHECK(at(side * 1.1).nearest.ahead_d == Approx(side * 1.1));
  }
  // Strands 1.1 d apart fill a pitch of 20 mm across, 22.2 d: after 20 of them .19 d are left to the first.
  CHECK(at(1.1).returns_after == 20);
}

TEST_CASE("turns that leave no room for another fiber between them have no pattern") {
  CHECK(pattern_of(cycle_of(2.0 * d), d, diameter, 0.1).kind == PatternKind::close_wind);
  CHECK(displacements(cycle_of(2.0 * d), d, diameter).empty());
  // Two strands laid evenly at 2.5 d leave 1.25 d: a third does not fit, so halves fill the layer and are no ribbon.
  const GuideCycle halves{0.5 * 2.5 * d * 60.5, 2.5 * d, 0.0, 0.0};
  REQUIRE(winding_ratio(halves) == Approx(60.5));
  CHECK(displacements(halves, d, diameter).size() == 1);
  CHECK(pattern_of(halves, d, diameter, 0.1).kind != PatternKind::ribbon);
}
