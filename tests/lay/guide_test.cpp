#include <cmath>
#include <numbers>

#include "base/units.h"
#include "lay/guide.h"
#include "plans.h"

using namespace laywright;
using testing::plain_draft;
using testing::sound;

namespace {

// Where the guide is after so many turns, walked in uneven pieces.
double after(Guide& guide, double turns, double piece = 0.37) {
  for (double left = turns * full_turn; left > 1e-13;) left -= guide.advance(std::min(left, piece)).angle;
  return guide.x();
}

PlanDraft short_stroke() {
  PlanDraft draft = plain_draft();
  draft.spool.inside_width_mm = 10.0;
  draft.traverse.pitch_mm = 0.5;
  draft.traverse.left_stop_mm = 1.0;
  draft.traverse.right_stop_mm = 2.0;  // a stroke of 7 mm: 14 turns
  return draft;
}

}  // namespace

// Kinematics of a guide geared to the spool: closed forms, no source needed.
TEST_CASE("an instant reversal turns round at the stop") {
  Guide guide(sound(short_stroke()), 1);
  CHECK(guide.x() == Approx(1.0));
  CHECK(after(guide, 10.0) == Approx(6.0));
  CHECK(guide.direction() == 1);
  CHECK(after(guide, 5.0) == Approx(7.5));  // 4 turns to the stop at 8 mm, 1 turn back
  CHECK(guide.direction() == -1);
  CHECK(guide.stroke() == 1);
  CHECK(after(guide, 13.0) == Approx(1.0));
  CHECK(after(guide, 1.0) == Approx(1.5));
  CHECK(guide.stroke() == 2);
}

TEST_CASE("a dwell of n turns stands n turns at the stop") {
  PlanDraft draft = short_stroke();
  draft.traverse.reversal = {ReversalKind::dwell, 2.5, 0.0, 0.0};
  Guide guide(sound(draft), 1);
  CHECK(after(guide, 14.0) == Approx(8.0));
  CHECK(after(guide, 2.499) == Approx(8.0));
  CHECK(guide.stroke() == 0);
  CHECK(after(guide, 0.001 + 1.0) == Approx(7.5));
}

TEST_CASE("a ramp slows to zero at the stop and returns, over n turns in all") {
  PlanDraft draft = short_stroke();
  draft.traverse.reversal = {ReversalKind::ramp, 4.0, 0.0, 0.0};
  Guide guide(sound(draft), 1);
  // Two turns of constant deceleration cover one turn's pitch: the ramp begins 0.5 mm before the stop.
  CHECK(after(guide, 13.0) == Approx(7.5));
  CHECK(after(guide, 1.0) == Approx(7.5 + 0.5 * (1.0 - 0.25)));
  CHECK(after(guide, 1.0) == Approx(8.0));
  CHECK(after(guide, 1.0) == Approx(8.0 - 0.5 * 0.25));
  CHECK(guide.stroke() == 1);
  CHECK(after(guide, 1.0) == Approx(7.5));
  CHECK(after(guide, 2.0) == Approx(6.5));
}

TEST_CASE("lost motion and play hold the guide until they are taken up") {
  PlanDraft draft = short_stroke();
  draft.traverse.reversal.lost_motion_mm = 0.75;  // a turn and a half of drive travel
  Guide guide(sound(draft), 1);
  CHECK(after(guide, 14.0 + 1.5) == Approx(8.0));
  CHECK(after(guide, 1.0) == Approx(7.5));

  PlanDraft loose = short_stroke();
  loose.traverse.guide_play_mm = 0.4;
  Guide eye(sound(loose), 3);
  // The eye is dragged along behind the guide: it falls short of each stop by up to half the play.
  double farthest = 0.0;
  for (int i = 0; i < 2000; ++i) farthest = std::max(farthest, after(eye, 0.05));
  CHECK(farthest < 8.0);
  CHECK(farthest > 7.8);
}

TEST_CASE("a stepped guide stands, then moves a pitch within the step angle at the end of each turn") {
  PlanDraft draft = short_stroke();
  draft.traverse.motion = Motion::stepped;
  draft.traverse.step_angle_rad = 0.25 * full_turn;
  Guide guide(sound(draft), 1);
  CHECK(after(guide, 0.75) == Approx(1.0));
  CHECK(after(guide, 0.125) == Approx(1.25));
  CHECK(after(guide, 0.125) == Approx(1.5));
  CHECK(after(guide, 0.70) == Approx(1.5));
}

TEST_CASE("a step that would pass the stop is cut short, and its turn begins the next stroke") {
  PlanDraft draft = short_stroke();
  draft.traverse.right_stop_mm = 2.25;  // the stop at 7.75: 13 steps and a half
  draft.traverse.motion = Motion::stepped;
  draft.traverse.step_angle_rad = 0.25 * full_turn;
  Guide guide(sound(draft), 1);
  CHECK(after(guide, 13.5) == Approx(7.5));
  CHECK(guide.stroke() == 0);
  CHECK(after(guide, 1.0) == Approx(7.75));
  CHECK(guide.stroke() == 1);
  CHECK(after(guide, 1.0) == Approx(7.25));
}

TEST_CASE("wind steps change pitch and stops from their layer on") {
  PlanDraft draft = short_stroke();
  WindStep step;
  step.from_layer = 2;
  step.pitch_mm = 1.0;
  step.left_stop_mm = 3.0;
  draft.wind.steps.push_back(step);
  Guide guide(sound(draft), 1);
  CHECK(after(guide, 14.0) == Approx(8.0));
  CHECK(after(guide, 2.0) == Approx(6.0));
  CHECK(after(guide, 3.0) == Approx(3.0));
  CHECK(after(guide, 1.0) == Approx(4.0));
}

TEST_CASE("scatter has the spread that the plan gives, and is the same for the same seed") {
  PlanDraft draft = short_stroke();
  draft.traverse.reversal.stop_scatter_mm = 0.2;
  const Plan plan = sound(draft);
  double sum = 0.0;
  double squares = 0.0;
  int count = 0;
  Guide guide(plan, 7);
  Guide twin(plan, 7);
  for (int stroke = 0; count < 4000; ++stroke) {
    double reached = guide.x();
    while (guide.stroke() == stroke) {
      (void)guide.advance(10.0);
      reached = guide.stroke() == stroke ? guide.x() : reached;
    }
    while (twin.stroke() == stroke) (void)twin.advance(10.0);
    if (stroke % 2 != 0) continue;  // the right stop
    sum += reached - 8.0;
    squares += (reached - 8.0) * (reached - 8.0);
    ++count;
  }
  CHECK(guide.x() == twin.x());
  // Four standard errors of 4000 normal draws.
  CHECK(std::abs(sum / count) < 4.0 * 0.2 / std::sqrt(4000.0));
  CHECK(std::sqrt(squares / count) == Approx(0.2).epsilon(4.0 / std::sqrt(8000.0)));
}
