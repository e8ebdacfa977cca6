// The text of a plan that is begun anew: with the entries of catalogues that it names, and comments that say of each value what
// it is and where it comes from.
#pragma once

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "plan/lay_plan.h"
#include "verdict/verdict.h"

namespace laywright {

struct NewPlanNotes {
  WindVerdict verdict;            // of the settings as they are
  std::set<std::string> assumed;  // key paths whose values nobody gave: they are called guesses
};

// What was proposed, by key path: "traverse.pitch", "0.255 mm".
[[nodiscard]] std::vector<std::pair<std::string, std::string>> proposed_settings(const PlanDraft& draft);

// Reads back as the draft, where the same entries are at hand.
[[nodiscard]] std::string new_plan_text(const PlanDraft& draft, const NewPlanNotes& notes);

}  // namespace laywright
