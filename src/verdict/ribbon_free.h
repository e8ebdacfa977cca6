// A pitch near to a given one at which the guide does not come back to the same place too soon.
//
// After m double strokes the next one begins m T turns on, T turns to a double stroke; where m T is near a whole number, it lies
// that part of a turn, times the pitch, beside the earlier one. A pitch is free of ribbons when that is 2.5 diameters or more
// for m = 1 to 4: room for a turn between two, with as much again for fiber that rolls (measure/findings.h takes half a diameter
// for a ribbon).
#pragma once

#include <cstddef>

namespace laywright {

struct RibbonFree {
  double pitch_mm = 0.0;
  std::size_t digits = 4;  // of the pitch, that count
  double turns = 0.0, turns_now = 0.0;
};

// The nearest finer pitch, of turns to a double stroke up to one more; where none is free (at pitches of few diameters), the one
// whose double strokes stay furthest apart. `double_stroke_mm`: travel of the guide there and back; `dwell_turns` of both its
// stops (plan/guide_cycle.h). Precondition: all but the dwell above 0.
[[nodiscard]] RibbonFree ribbon_free_pitch(double pitch_mm, double double_stroke_mm, double dwell_turns,
                                           double diameter_mm);

}  // namespace laywright
