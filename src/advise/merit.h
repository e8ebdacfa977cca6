// How good an outcome is, for a search: first whether it keeps the plan's limits, then how much fiber lies beside open
// gaps, how far the edges are off the middle, and how much of the depth under the rim it takes.
#pragma once

#include <array>
#include <optional>

#include "advise/outcome.h"

namespace laywright {

// By how much each is worth more than the next; a person's own order.
struct MeritWeights {
  double gap_length = 1.0;      // per percent of the fiber's length
  double edge_deviation = 1.0;  // per fiber diameter
  double rim_use = 1.0;         // per percent of the depth
};

struct Merit {
  // Pile-ups and flange gaps, each place by its size in d, and rim clearance that is missing, in d. 0: it keeps the
  // limits.
  double beyond_limits_d = 0.0;
  double gap_share = 0.0;  // of the fiber's length
  double edge_deviation_d = 0.0;
  double rim_use = 0.0;

  [[nodiscard]] bool keeps_limits() const { return beyond_limits_d <= 0.0; }
};

[[nodiscard]] Merit merit_of(const Plan& plan, const Outcome& outcome);

// One number, less is better. Limits count before all else. Then with weights their sum; without them in the order
// above: a difference of 0.1 % of the length in gaps counts as much as 3 d of edge deviation, 0.1 d of that as much as
// 15 % of the depth.
[[nodiscard]] double cost_of(const Merit& merit, const std::optional<MeritWeights>& weights);

}  // namespace laywright
