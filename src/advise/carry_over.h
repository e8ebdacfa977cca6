// What a fit found of the machine, taken over into another plan for it, so that this one winds right at once.
#pragma once

#include <string>
#include <vector>

#include "advise/fit.h"

namespace laywright {

struct CarriedSetting {
  std::string path;  // "traverse.pitch", "wind.step[0].left_stop"
  double before = 0.0, after = 0.0;
};

// Applies the corrections of the fit (fit.h), and returns what changed: a pitch in the same proportion, stops and the turns of
// a reversal by the same amount, as exactly as they are told; those of the wind's steps, too. Turns of a reversal do not fall below 0, and
// are left alone where `next` has a reversal of another kind than `wound`. All else of `next` stays as it is.
[[nodiscard]] std::vector<CarriedSetting> carry_over(const Plan& wound, const Fit& fit, PlanDraft& next);

}  // namespace laywright
