// A verdict over draws and tolerances: what a plan is worth when it is wound again and again.
#pragma once

#include <optional>

#include "advise/draws.h"
#include "advise/judged.h"

namespace laywright {

inline constexpr int most_draws = 99;

// The winds that a plan is judged by: draws (draws.h), the first as it is; where it states a tolerance of the fiber's diameter,
// the others are spread evenly over it.
[[nodiscard]] std::vector<TrialOrder> robust_orders(const PlanDraft& draft, const LaySettings& settings, int count);

// The first of these verdicts, with grade, reason and what to set first of the worst of them, and all that were seen. Those that
// are absent do not count. Precondition: as many of both, and the first is there.
[[nodiscard]] WindVerdict worst_of(const Plan& plan, const std::vector<TrialOrder>& orders,
                                   const std::vector<std::optional<WindVerdict>>& verdicts);

// The verdict on a wind with that of other draws, `count` in all: grade, reason and what to set first are the worst one's.
// A draw that is no sound plan does not count. None when cancelled. Precondition: `first` is of draw 0; count from 1 to
// `most_draws`.
[[nodiscard]] std::optional<WindVerdict> over_draws(const Plan& plan, const LaySettings& settings,
                                                    const WindVerdict& first, int count, int threads,
                                                    const Stretch& stretch);

}  // namespace laywright
