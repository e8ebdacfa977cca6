// A crossed wind for the tests of patterns.
#pragma once

#include "lay/plans.h"

namespace laywright::testing {

namespace crossed {
inline constexpr double d = 0.9, diameter = 125.9;  // mm, of its fiber and of the first layer's middle
}

// 0.9 mm fiber on 125 mm at a pitch of 20 mm: from stop to stop 150 mm, 15 turns there and back.
inline PlanDraft whole_ratio_draft() {
  PlanDraft draft = plain_draft();
  draft.title = "Crossed";
  draft.spool.barrel_diameter_mm = 125.0;
  draft.spool.flange_diameter_mm = 200.0;
  draft.spool.inside_width_mm = 160.0;
  draft.fiber.diameter_mm = 0.9;
  draft.traverse.pitch_mm = 20.0;
  draft.traverse.left_stop_mm = 5.0;
  draft.traverse.right_stop_mm = 5.0;
  draft.wind.turns = 600.0;
  return draft;
}

}  // namespace laywright::testing
