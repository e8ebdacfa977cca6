// A beginning: settings of the traverse that give a good wind of a spool, a fiber and a length.
//
// The settings that are open are first what is usual (verdict/usual_settings.h; the stops at which the fiber reaches its
// flanges), rounded to what a person would set; then the wind is laid in full, as several draws and over the fiber's tolerance,
// and judged. Where it is not good, the search of improve.h goes on from it, and each of its proposals is judged the same way, the
// first good one is taken. So what is proposed has been laid and judged as it is written.
#pragma once

#include <string>
#include <vector>

#include "advise/improve.h"
#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

struct BeginSettings {
  LaySettings lay;
  int threads = threads_at_hand();
  int draws = 0;                   // that it is judged by; 0: the usual number
  int trials = 160;                // of the search
  std::vector<std::string> given;  // key paths that stay as they are in the draft
};

struct Beginning {
  PlanDraft draft;
  WindVerdict verdict;    // over the draws
  bool searched = false;  // the usual settings were not good
};

// Proposes pitch and both stops, unless they are given; the reversal is instant unless its kind is. The best that was found; its
// verdict says whether it is good. The progress begins anew where it has to search. Errors: with usual settings the draft is no
// sound plan, or its build too large; cancelled (text `stopped_text`).
[[nodiscard]] Result<Beginning> begin_plan(PlanDraft draft, const BeginSettings& settings, Progress& progress);

}  // namespace laywright
