// How good a wind is, for a search: by the verdict. First how far its figures are past being good, in the verdict's own terms
// (ridges, valleys, gaps, ride-ups, dropped turns and all else that it weighs, each against its limit); then how much room the
// good ones leave.
#pragma once

#include <optional>

#include "advise/trial.h"

namespace laywright {

// What a person values more than room within the limits.
struct MeritWeights {
  double gap_length = 1.0;      // per percent of the fiber's length
  double edge_deviation = 1.0;  // per fiber diameter
  double rim_use = 1.0;         // per percent of the depth
};

struct Merit {
  Grade grade = Grade::good;  // the worst of the checks of how the fiber lies
  Grade pull = Grade::good;   // and of those of its pull
  // Over all these checks: by what share of the place where they cease to be good they are past it.
  double past_good = 0.0;
  // Over those of how it lies: the square of their share of that place, each 1 at most.
  double load = 0.0;
  double gap_share = 0.0;  // of the fiber's length
  double edge_deviation_d = 0.0;
  double rim_use = 0.0;
};

// Of how the fiber lies and of its pull, and of how it comes off again where the trial was judged; bend and speed are not searched
// for.
[[nodiscard]] Merit merit_of(const Plan& plan, const Trial& trial);

// One number, less is better. What is past good counts before all else; then with weights their sum, without them the load.
[[nodiscard]] double cost_of(const Merit& merit, const std::optional<MeritWeights>& weights);

}  // namespace laywright
