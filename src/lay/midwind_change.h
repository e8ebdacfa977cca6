// Settings that are changed while a spool is wound: the machine is stopped, and goes on with others.
#pragma once

namespace laywright {

// From a turn on, by how much they differ from what the plan has there, in the steps of the wind that follow, too. All but
// `from_turn` as here: nothing is changed, and the build is the plan's, bit for bit.
struct MidwindChange {
  double from_turn = 0.0;  // of the spool; it holds from the next station on
  double pitch_factor = 1.0;
  double left_stop_mm = 0.0, right_stop_mm = 0.0;  // further inward
  double reversal_turns = 0.0;                     // longer

  [[nodiscard]] bool nothing() const {
    return pitch_factor == 1.0 && left_stop_mm == 0.0 && right_stop_mm == 0.0 && reversal_turns == 0.0;
  }
  friend bool operator==(const MidwindChange&, const MidwindChange&) = default;
};

}  // namespace laywright
