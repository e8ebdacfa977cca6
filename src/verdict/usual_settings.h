// Settings as they usually are on a machine that winds well: where a first setting is looked for, and where a search begins.
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

// A pitch a few percent over the diameter lays turns side by side; the guide must not push them onto each other, nor leave room
// for a third of one.
inline constexpr double good_pitch_d = 1.04, finest_pitch_d = 1.0, coarsest_pitch_d = 1.15;
// Beyond it, order is lost at the flanges of the wind in tests/results.md (fiber .25 mm: 100 mm).
inline constexpr double long_free_length_d = 400.0;
// A ramp that the fiber's lag hides.
inline constexpr double short_ramp_turns = 0.5;

// Of turns side by side. Parallel turns that step are laid wire on wire.
[[nodiscard]] inline double usual_pitch_mm(const PlanDraft& draft) {
  return (draft.traverse.motion == Motion::stepped ? 1.0 : good_pitch_d) * draft.fiber.diameter_mm;
}

}  // namespace laywright
