// The motion of the traversing guide over the spool's angle.
#pragma once

#include <cstdint>

#include "base/random.h"
#include "lay/midwind_change.h"
#include "plan/lay_plan.h"

namespace laywright {

// A piece of guide motion: x(t) = start + slope t + bend t^2 for 0 <= t <= angle; x mm, t rad of the spool.
struct GuidePiece {
  double angle = 0.0;
  double start = 0.0;
  double slope = 0.0;
  double bend = 0.0;

  [[nodiscard]] double end() const { return start + angle * (slope + angle * bend); }
};

// Where the fiber leaves the guide, x in mm from the left flange face. Copies go on independently.
//
// A dwell belongs to the stroke that it ends; lost motion and the eye's play are taken up at the start of the next
// stroke, while the eye stands. A stepped guide stands, then moves one pitch in the last
// `step_angle` of each turn; a step that would pass the stop is cut short there, and with it the stroke ends.
class Guide {
 public:
  // Precondition: the plan is sound. Scatter is drawn from `seed`.
  Guide(const Plan& plan, std::uint64_t seed);

  // The next piece of motion, at most `angle` rad long (angle > 0).
  [[nodiscard]] GuidePiece advance(double angle);

  // The machine is stopped, and goes on with other settings; `from_turn` has come. The stroke goes on to the stop where that
  // is now; a guide that is beyond it turns round at once, and one at its reversal does what it does there.
  void change(const MidwindChange& change);

  [[nodiscard]] double x() const { return x_; }
  [[nodiscard]] double seat() const { return seat_; }         // of the fiber in the eye, from the eye's middle
  [[nodiscard]] int stroke() const { return stroke_; }        // 0 = the first
  [[nodiscard]] int direction() const { return direction_; }  // +1 to the right, -1 to the left

 private:
  enum class Phase { dwell, take_up, run, slow_down, speed_up, step_stand, step_run };

  void begin_stroke();
  void enter(Phase phase);
  void leave_phase();
  void plan_step();
  void set_changed(const MidwindChange& change);
  [[nodiscard]] double stop_on(Side side) const;

  Spool spool_;
  Traverse traverse_;
  std::vector<WindStep> steps_;
  Random stop_scatter_, pitch_scatter_, play_;

  double x_ = 0.0;     // where the fiber leaves the eye
  double seat_ = 0.0;  // of the fiber in the eye, from the guide's centre
  int stroke_ = -1;
  int direction_ = 1;
  double pitch_ = 0.0;     // of this stroke, with its scatter
  double scatter_ = 0.0;   // of the stop that this stroke goes to
  double target_ = 0.0;    // where this stroke ends
  double backlash_ = 0.0;  // drive travel still to take up before the eye moves
  double step_travel_ = 0.0;
  bool step_ends_stroke_ = false;
  Phase phase_ = Phase::run;
  double left_in_phase_ = 0.0;  // rad
};

}  // namespace laywright
