// A wind is sensitive: a stop that is off by a hundredth of a fiber diameter lets other turns climb or drop. So one
// build is one draw, and what a setting does is seen on several: the same plan with the guide shifted sideways by less
// than anybody can set, and with another seed of its scatter.
#pragma once

#include <optional>
#include <vector>

#include "advise/sought_finding.h"
#include "advise/trial.h"

namespace laywright {

// Share of the fiber's diameter by which draws are shifted.
inline constexpr double draw_shift_d = 0.01;

// The plan with its guide shifted sideways by so much of a fiber diameter, in all steps of the wind alike.
[[nodiscard]] PlanDraft shifted(PlanDraft draft, double shift_d);

// Orders of draws first, first + 1, ... first + count - 1 of a plan; draw 0 is the plan as it is.
[[nodiscard]] std::vector<TrialOrder> draws_of(const PlanDraft& draft, const LaySettings& settings, int count,
                                               int first = 0);

// Means over draws.
struct MeanAmount {
  FindingAmount of_sought;
  double gravity_of_all = 0.0;
  int draws = 0;
};

void add_draw(MeanAmount& mean, const Plan& plan, const SoughtFinding& sought, const std::vector<Finding>& findings);

// Of so many trials from `begin` on; none if any of them could not be laid.
[[nodiscard]] std::optional<MeanAmount> mean_amount(const Plan& plan, const SoughtFinding& sought,
                                                    const std::vector<std::optional<Trial>>& trials,
                                                    std::size_t begin, int count);

}  // namespace laywright
