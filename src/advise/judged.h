// A plan laid, measured, taken up and judged: what comes of it, and the verdict on it.
#pragma once

#include <optional>

#include "advise/trial.h"
#include "verdict/verdict.h"

namespace laywright {

struct Judged {
  Outcome outcome;
  WindVerdict verdict;
};

// None where the plan is not sound, or could not be laid, or `progress` was cancelled. A coarse build is judged as it is; its
// verdict may be another one than that of a fine build.
// `way`: of the payoff in the outcome; the verdict's is drawn off the side.
[[nodiscard]] std::optional<Judged> judge_plan(const PlanDraft& draft, const LaySettings& settings,
                                               Progress& progress, DrawOff way = DrawOff::side);

}  // namespace laywright
