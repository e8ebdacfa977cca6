// In what steps a plan is laid, so that there is something to see at once.
#pragma once

#include <vector>

#include "desk/wound.h"

namespace laywright {

// What laying and measuring cost on this machine, learned from what was laid before.
struct LayCost {
  double ns_per_node = 350.0;

  // Takes a pass of so many nodes and seconds into account.
  void learn(double seconds, double nodes);
};

// The first look is made to take about as long as this. Half a dozen frames: it seems to follow the hand.
inline constexpr double first_look_ms = 60.0;

// The coarsest mesh that still shows the build's shape, as fidelity and as stations per turn.
inline constexpr double coarsest_fidelity = 0.12;
inline constexpr double fewest_stations = 24.0;

// First what can be laid in first_look_ms: a coarse build and, where even the coarsest of the whole wind would take
// longer, only its beginning; in that case then a coarse build of the whole. The full one is the last.
[[nodiscard]] std::vector<Pass> passes_for(const Plan& plan, const LayCost& cost);

}  // namespace laywright
