// The scrubber: a moment of the wind, by length, turn or time, and its play.
#pragma once

#include <limits>
#include <optional>

#include "desk/wound.h"

namespace laywright {

// A value. The place is kept as length of fiber, so that it stays when another build takes the place of this one; a
// build that is shorter shows its end.
struct Playback {
  static constexpr double at_end = std::numeric_limits<double>::infinity();

  double wanted_mm = at_end;
  bool playing = false;
  // Times the line speed; none: such that the whole wind takes whole_wind_s.
  std::optional<double> rate;
  std::optional<double> stop_mm;  // play that comes here from before stops; none: at the end of the wind

  [[nodiscard]] bool operator==(const Playback&) const = default;
};

inline constexpr double whole_wind_s = 30.0;
inline constexpr double slowest_rate = 1.0 / 64.0, fastest_rate = 1e5;

// What the machine runs at: the plan's line speed, or 60 m/min (common practice for trials, no source) where it
// gives none.
struct LineSpeed {
  double mm_per_s = 1000.0;
  bool assumed = true;
};
[[nodiscard]] LineSpeed line_speed_of(const Plan& plan);

// A place of the scrubber in all its measures.
struct Moment {
  bool at_end = true;
  double length_mm = 0.0;
  double turn = 0.0;
  double time_s = 0.0;  // at line speed
  int layer = 0;
  double angle_rad = 0.0;                 // of the lay point, 0 to 2 pi
  double lay_x_mm = 0.0, lay_r_mm = 0.0;  // where the fiber lies there in the build
  double guide_x_mm = 0.0;
};
[[nodiscard]] Moment moment_of(const Playback& playback, const Wound& wound);

// The turn up to which the wind is shown at this moment. Played faster than a few turns a second, the lay point would
// be at another place around the spool in each frame: then the newest turn is shown that ends on the front upper side,
// so that guide and fiber stand there.
[[nodiscard]] double shown_turn(const Playback& playback, const Wound& wound, const Moment& moment);
inline constexpr double fast_turns_per_s = 3.0;
inline constexpr double fast_angle_share = 0.125;  // of a turn, from the top

// The scrubber at another place, brought into the wind; its end is kept as at_end.
[[nodiscard]] Playback at_length(Playback playback, const Wound& wound, double length_mm);
[[nodiscard]] Playback at_turn(Playback playback, const Wound& wound, double turn);
[[nodiscard]] Playback at_time(Playback playback, const Wound& wound, double time_s);

// To where the next (+1) or previous (-1) finding begins; unchanged where there is none.
[[nodiscard]] Playback at_finding(Playback playback, const Wound& wound, int direction);
// Index of that finding.
[[nodiscard]] std::optional<std::size_t> finding_beside(const Playback& playback, const Wound& wound, int direction);

// Times the line speed.
[[nodiscard]] double rate_of(const Playback& playback, const Wound& wound);
[[nodiscard]] Playback with_rate(Playback playback, double rate);

// Play from here; from the start when it stands at the end.
[[nodiscard]] Playback started(Playback playback);

// After so many seconds of play. At the end of the wind, or where it is to stop, it stops.
[[nodiscard]] Playback played(Playback playback, const Wound& wound, double seconds);

}  // namespace laywright
