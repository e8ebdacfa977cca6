// Where the double strokes of a crossed wind lie beside one another: closed forms.
//
// The *winding ratio* n is the number of turns of the spool in a double stroke, the guide's way from a stop to the
// other one and back. The guide knows nothing of the diameter, so n stays the same while the wind grows; and the free
// length only moves the whole picture, since every double stroke lags alike. What is behind the formulas: a strand of a
// stroke follows x = p (T - n k), p the pitch, T the turns since the start, k the number of its double stroke (derived;
// x along the guide's way). At the same angle of the spool, the strand of b double strokes later stands
//
//   ahead of it by  p (a - b n),  a the whole number next to b n.
//
// At a distance of less than d / cos(angle) along the axis, two strands of one direction lie on one another. So n at a
// whole number lays each double stroke on the last one, and n at a / b on the one b before: a *ribbon*, with open space
// beside it. A displacement of one fiber and a little more is the close pattern of precision winding. It is the "gain"
// of textile winding, d / (pi D sin(angle)) in turns, times the pitch (textbooks of yarn winding, from memory).
//
// This is where the guide leads the fiber. In builds a fiber that is held lies there to .02 d; a round one that crosses
// others gives way to them by up to .3 d.
#pragma once

#include <vector>

#include "plan/guide_cycle.h"

namespace laywright {

// Between the fiber and the circumference, atan(pitch / (pi D)); D > 0 of the centre line.
[[nodiscard]] double winding_angle_rad(double pitch_mm, double diameter_mm);

// Whether strands laid evenly by so many double strokes, up to `most_starts`, would leave room for one more between them (pitch
// over their number coarser than 2 d). If not, they fill the layer however they lie.
[[nodiscard]] bool has_ribbons_of(int starts, const GuideCycle& cycle, double d_mm);

// How a strand lies beside the one of `starts` double strokes before.
struct Displacement {
  int starts = 1;         // b
  long turns = 0;         // a: b double strokes are near to so many turns; a / b is in its lowest terms
  double ahead_mm = 0.0;  // along the axis, in the guide's direction; below 0: behind
  double ahead_d = 0.0;   // across the fiber, in d
};
// For every b that has ribbons. Empty for a close wind.
[[nodiscard]] std::vector<Displacement> displacements(const GuideCycle& cycle, double d_mm, double diameter_mm);

enum class PatternKind { close_wind, ribbon, close_pattern, open };
// "close wind", "ribbon", "close pattern", "open".
[[nodiscard]] const char* name_of(PatternKind kind);

// A gap between fibers of a close pattern, in d, and what is allowed for it.
inline constexpr double usual_gap_d = 0.1;
inline constexpr double least_gap_d = 0.02, most_gap_d = 0.5;

struct Pattern {
  double ratio = 0.0;
  PatternKind kind = PatternKind::open;
  Displacement nearest;  // that decides: the ribbon of fewest starts, else the least; means nothing in a close wind
  // The first double stroke that comes back to within half a fiber, across, of where the first one lay.
  int returns_after = 0;
};
// A ribbon: some displacement is less than one fiber. A close pattern: the least is one fiber to one fiber and twice
// the gap. Open: all are more.
[[nodiscard]] Pattern pattern_of(const GuideCycle& cycle, double d_mm, double diameter_mm, double gap_d);

}  // namespace laywright
