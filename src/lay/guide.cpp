#include "lay/guide.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/layer_setting.h"

namespace laywright {
namespace {

constexpr double turn = 2.0 * std::numbers::pi;

// However close scattered stops come, a stroke takes an eighth of a turn, or it would never end.
constexpr double least_travel_in_pitches = 0.125;
constexpr double least_pitch_factor = 0.1;

}  // namespace

Guide::Guide(const Plan& plan, std::uint64_t seed)
    : spool_(plan.spool()),
      traverse_(plan.traverse()),
      steps_(plan.wind().steps),
      stop_scatter_(seed),
      pitch_scatter_(seed ^ 0x9E3779B97F4A7C15ULL),
      play_(seed ^ 0xC2B2AE3D27D4EB4FULL) {
  direction_ = traverse_.start == Side::left ? -1 : 1;  // begin_stroke() turns it round
  x_ = stop_on(traverse_.start);
  begin_stroke();
}

double Guide::stop_on(Side side) const {
  return side == Side::left ? traverse_.left_stop_mm : spool_.inside_width_mm - traverse_.right_stop_mm;
}

void Guide::begin_stroke() {
  ++stroke_;
  direction_ = -direction_;
  for (const WindStep& step : steps_) {
    if (step.from_layer == stroke_ + 1) apply(step, traverse_);
  }
  const double factor = 1.0 + traverse_.pitch_scatter * pitch_scatter_.normal();
  pitch_ = traverse_.pitch_mm * std::max(factor, least_pitch_factor);

  // The fiber is dragged along by the trailing side of the eye.
  const double seat = -direction_ * 0.5 * traverse_.guide_play_mm * play_.uniform();
  const double play = stroke_ == 0 ? 0.0 : std::abs(seat - seat_);
  if (stroke_ == 0) x_ += seat;
  seat_ = seat;

  scatter_ = traverse_.reversal.stop_scatter_mm * stop_scatter_.normal();
  target_ = stop_on(direction_ > 0 ? Side::right : Side::left) + seat_ + scatter_;
  const double least = least_travel_in_pitches * pitch_;
  if ((target_ - x_) * direction_ < least) target_ = x_ + direction_ * least;

  backlash_ = (stroke_ == 0 ? 0.0 : traverse_.reversal.lost_motion_mm) + play;
  enter(traverse_.motion == Motion::stepped ? Phase::step_stand : Phase::take_up);
}

void Guide::enter(Phase phase) {
  phase_ = phase;
  const double slope = pitch_ / turn;
  const double half_ramp =
      traverse_.reversal.kind == ReversalKind::ramp ? 0.5 * traverse_.reversal.turns * turn : 0.0;
  switch (phase) {
    case Phase::dwell:
      left_in_phase_ = traverse_.reversal.kind == ReversalKind::dwell ? traverse_.reversal.turns * turn : 0.0;
      break;
    case Phase::take_up: left_in_phase_ = backlash_ / slope; break;
    case Phase::run: left_in_phase_ = std::max(0.0, (target_ - x_) * direction_ / slope - 0.5 * half_ramp); break;
    case Phase::slow_down:
    case Phase::speed_up: left_in_phase_ = half_ramp; break;
    case Phase::step_stand: left_in_phase_ = turn - traverse_.step_angle_rad; break;
    case Phase::step_run:
      plan_step();
      left_in_phase_ = traverse_.step_angle_rad;
      break;
  }
}

void Guide::plan_step() {
  const double taken_up = std::min(backlash_, pitch_);
  backlash_ -= taken_up;
  const double wanted = pitch_ - taken_up;
  const double remaining = std::max(0.0, (target_ - x_) * direction_);
  // A step that just reaches the stop does not pass it; rounding must not decide.
  step_ends_stroke_ = wanted > remaining * (1.0 + 1e-9) + 1e-9 * pitch_;
  step_travel_ = step_ends_stroke_ ? remaining : wanted;
}

void Guide::leave_phase() {
  switch (phase_) {
    case Phase::dwell: begin_stroke(); break;
    case Phase::take_up:
      // The wind starts at full speed: the first stroke has no reversal behind it.
      enter(traverse_.reversal.kind == ReversalKind::ramp && stroke_ > 0 ? Phase::speed_up : Phase::run);
      break;
    case Phase::run: enter(traverse_.reversal.kind == ReversalKind::ramp ? Phase::slow_down : Phase::dwell); break;
    case Phase::slow_down: enter(Phase::dwell); break;
    case Phase::speed_up: enter(Phase::run); break;
    case Phase::step_stand: enter(Phase::step_run); break;
    case Phase::step_run: enter(step_ends_stroke_ ? Phase::dwell : Phase::step_stand); break;
  }
}

void Guide::set_changed(const MidwindChange& change) {
  traverse_.pitch_mm *= change.pitch_factor;
  traverse_.left_stop_mm += change.left_stop_mm;
  traverse_.right_stop_mm += change.right_stop_mm;
  Reversal& reversal = traverse_.reversal;
  reversal.turns = std::max(0.0, reversal.turns + change.reversal_turns);
  if (reversal.turns > 0.0 && reversal.kind == ReversalKind::instant) reversal.kind = ReversalKind::dwell;
  for (WindStep& step : steps_) {
    if (step.pitch_mm) *step.pitch_mm *= change.pitch_factor;
    if (step.left_stop_mm) *step.left_stop_mm += change.left_stop_mm;
    if (step.right_stop_mm) *step.right_stop_mm += change.right_stop_mm;
  }
  pitch_ *= change.pitch_factor;
}

void Guide::change(const MidwindChange& change) {
  if (change.nothing()) return;
  const double half_before = 0.5 * traverse_.reversal.turns * turn;
  set_changed(change);
  const double half_ramp = 0.5 * traverse_.reversal.turns * turn;
  const double slope = pitch_ / turn;
  const double stop = stop_on(direction_ > 0 ? Side::right : Side::left) + seat_ + scatter_;
  // Where the stroke ends now, if the guide cannot come to rest before it has moved on by so much.
  const auto end_after = [&](double least) { return x_ + direction_ * std::max((stop - x_) * direction_, least); };
  switch (phase_) {
    case Phase::dwell: break;
    case Phase::take_up:
      left_in_phase_ /= change.pitch_factor;
      target_ = end_after(0.0);
      break;
    case Phase::run:
      target_ = end_after(traverse_.reversal.kind == ReversalKind::ramp ? 0.5 * slope * half_ramp : 0.0);
      enter(Phase::run);
      break;
    case Phase::slow_down:
      left_in_phase_ *= half_ramp / half_before;
      target_ = x_;
      if (half_ramp > 0.0) target_ += direction_ * 0.5 * slope * left_in_phase_ * left_in_phase_ / half_ramp;
      break;
    case Phase::speed_up: {
      left_in_phase_ *= half_ramp / half_before;
      const double run_up = half_ramp - left_in_phase_;
      // What is left of this ramp, and the next one.
      target_ = end_after(half_ramp > 0.0 ? slope * (half_ramp - 0.5 * run_up * run_up / half_ramp) : 0.0);
      break;
    }
    case Phase::step_stand: target_ = end_after(0.0); break;
    case Phase::step_run:
      if (!step_ends_stroke_) target_ = end_after(step_travel_ * left_in_phase_ / traverse_.step_angle_rad);
      break;
  }
}

GuidePiece Guide::advance(double angle) {
  while (left_in_phase_ <= 0.0) leave_phase();
  GuidePiece piece;
  piece.angle = std::min(angle, left_in_phase_);
  piece.start = x_;
  const double slope = direction_ * pitch_ / turn;
  const double half_ramp = 0.5 * traverse_.reversal.turns * turn;
  switch (phase_) {
    case Phase::run: piece.slope = slope; break;
    case Phase::slow_down:
      piece.slope = slope * left_in_phase_ / half_ramp;
      piece.bend = -0.5 * slope / half_ramp;
      break;
    case Phase::speed_up:
      piece.slope = slope * (half_ramp - left_in_phase_) / half_ramp;
      piece.bend = 0.5 * slope / half_ramp;
      break;
    case Phase::step_run: piece.slope = direction_ * step_travel_ / traverse_.step_angle_rad; break;
    case Phase::dwell:
    case Phase::take_up:
    case Phase::step_stand: break;
  }
  left_in_phase_ -= piece.angle;
  // Land on the stop itself, not on what rounding left of the way.
  const bool arrives =
      left_in_phase_ <= 0.0 &&
      (phase_ == Phase::slow_down || (phase_ == Phase::run && traverse_.reversal.kind != ReversalKind::ramp) ||
       (phase_ == Phase::step_run && step_ends_stroke_));
  x_ = arrives ? target_ : piece.end();
  return piece;
}

}  // namespace laywright
