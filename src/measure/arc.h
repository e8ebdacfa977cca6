// An arc around the spool, degrees; a full turn is [0, 360].
#pragma once

namespace laywright {

struct Arc {
  double from_deg = 0.0;  // 0 to below 360
  double span_deg = 0.0;  // 0 to 360

  [[nodiscard]] static Arc all_round() { return {0.0, 360.0}; }
  [[nodiscard]] bool is_all_round() const { return span_deg >= 360.0; }
};

// From one angle onward to another, both of any size; all round when they are a turn or more apart.
[[nodiscard]] Arc arc_between(double from_deg, double to_deg);

// The shortest arc that covers both.
[[nodiscard]] Arc covering(const Arc& a, const Arc& b);

// Angle between the two; 0 when they touch.
[[nodiscard]] double apart_deg(const Arc& a, const Arc& b);

}  // namespace laywright
