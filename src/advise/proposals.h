// Positions of the settings, laid in full and judged.
#pragma once

#include <vector>

#include "advise/improve.h"
#include "advise/improve_search.h"

namespace laywright {

// Each on its draws; in the order of the positions, those left out that could not be laid. `verdict` and `text` are not filled in
// yet. None when cancelled. `trials`: counted up by what was laid.
[[nodiscard]] std::vector<Proposal> judge(const Plan& plan, const std::vector<SearchableSetting>& searchables,
                                          const std::vector<std::vector<double>>& positions,
                                          const ImproveSettings& settings, const Stretch& stretch, int& trials);

// Each setting a step off as well, and the fiber at both ends of its tolerance. False when cancelled.
bool add_steps(const Plan& plan, const std::vector<SearchableSetting>& searchables, std::vector<Proposal>& proposals,
               const ImproveSettings& settings, const Stretch& stretch, int& trials);

// Less by the measure of the search, on every draw.
[[nodiscard]] bool better_on_all_draws(const Proposal& one, const Proposal& other);

// As `lay` tells it: the whole wind, with what the machine does. Precondition: the draft is sound. False when cancelled.
bool add_verdicts(const std::vector<Proposal*>& proposals, const ImproveSettings& settings, const Stretch& stretch);

}  // namespace laywright
