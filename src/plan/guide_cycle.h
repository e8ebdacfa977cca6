// The way of a traversing guide to the other stop and back, as the plan sets it.
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

// A double stroke of a continuous guide. Play of the eye adds nothing: what it shortens in a stroke's way it takes to be
// taken up.
struct GuideCycle {
  double stroke_mm = 0.0;  // between the stops; above 0
  double pitch_mm = 0.0;   // above 0
  double lost_motion_mm = 0.0;
  // At each reversal: of a dwell its turns, of a ramp half of them (it covers the rest).
  double standing_turns = 0.0;
};
// Of settings that hold. Of a stepped guide stroke and pitch alone are right.
[[nodiscard]] GuideCycle guide_cycle(const Spool& spool, const Traverse& traverse);

// 2 ((stroke + lost motion) / pitch + standing turns).
[[nodiscard]] double winding_ratio(const GuideCycle& cycle);

// Up to this pitch, in d, no fiber fits between two turns of a stroke: there is no pattern to speak of.
inline constexpr double close_wind_d = 2.0;

// Ribbons are looked for among so many double strokes before, in a plan and in a build alike.
inline constexpr int most_starts = 4;

}  // namespace laywright
