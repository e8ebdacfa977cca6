// Plans with one to three settings made wrong, from a seed: what advice is measured on.
//
// Each begins as a plan that is good on several draws (verdict.h): fiber on a spool, wire on a reel, a soft line on a tube, all
// narrow and of a dozen layers or less, so that hundreds of winds of them take seconds. Then settings are moved by what shows
// on a real machine; only plans whose verdict is "do not wind" are kept.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "plan/lay_plan.h"

namespace laywright::testing {

struct FlawedPlan {
  PlanDraft good;                  // as it was before
  PlanDraft draft;                 // as it is
  std::vector<std::string> wrong;  // key paths that were moved; of the reversal its turns
  std::string story;               // "wire: pitch 0.235 -> 0.28, ..."
};

// The plans of a seed; the first of many are the same as those of few.
[[nodiscard]] std::vector<FlawedPlan> flawed_plans(std::uint64_t seed, int count);

}  // namespace laywright::testing
