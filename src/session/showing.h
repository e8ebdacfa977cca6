// Showing a wind to others: a clean picture in which the spool fills while a few figures count, then turns slowly, and
// begins again. A value; what is seen follows from how far into a round it is.
#pragma once

#include <optional>

#include "desk/playback.h"

namespace laywright {

struct Showing {
  static constexpr double fill_s = 24.0, turn_s = 30.0, round_s = fill_s + turn_s;

  double seconds = 0.0;  // into the round, 0 to below round_s
  bool paused = false;
  bool details = false;  // sizes of spool and fiber are told
};

// After so many seconds more; a paused one stays.
[[nodiscard]] Showing shown_on(Showing showing, double seconds);

// Of the wind that is there, 0 to 1: slower at its beginning and end.
[[nodiscard]] double share_filled(const Showing& showing);

// 1 where the picture is hidden between two rounds, 0 where it is all there.
[[nodiscard]] double veil(const Showing& showing);

// Of the picture's height, what is left for words.
struct ShowRoom {
  double above = 0.0, below = 0.0;
};

// What is seen: theme and units, perspective and size are those of `view`. From wherever the camera looks on its way,
// the whole spool fits between the words.
[[nodiscard]] View view_of_showing(const Showing& showing, const Wound& wound, View view, const ShowRoom& room);

struct ShowFigures {
  double length_mm = 0.0, turns = 0.0;
  double diameter_mm = 0.0;  // over the fiber, in the middle of the spool, as it lies by then: with the layer on top
  std::optional<double> time_s;  // none where the plan gives no line speed
};
[[nodiscard]] ShowFigures figures_of_showing(const Showing& showing, const Wound& wound);

}  // namespace laywright
