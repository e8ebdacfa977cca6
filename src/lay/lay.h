// The lay model: from a plan to a build. The model, its formulas and its limits: MODEL.md.
#pragma once

#include <cstdint>

#include "base/progress.h"
#include "base/result.h"
#include "lay/build.h"
#include "lay/midwind_change.h"
#include "plan/lay_plan.h"

namespace laywright {

struct LaySettings {
  std::uint64_t seed = 1;  // of all scatter
  // Multiplies the station count that the model needs: 1 is full fidelity, 0.25 a quick look, 2 a check of
  // mesh independence. Greater than 0.
  double fidelity = 1.0;
  // Whether laid turns of a soft fiber give way (slump.h): it takes many times as long as laying them. A quick look may leave
  // it out, and says so. Changes nothing for a fiber that is not soft.
  bool gives_way = true;
  // What is laid before its turn is laid as without it, but for what can still move then, less than a turn.
  MidwindChange change = {};
};

// Stations per turn that the plan needs at full fidelity: at least four inside a crossover, and no more than
// d/8 of axial travel relative to the layer below between neighbours.
[[nodiscard]] int stations_needed(const Plan& plan);

// Lays the plan. The same plan, seed and fidelity give the same bits. When cancelled through `progress`, returns
// an error issue whose text is `stopped_text`.
[[nodiscard]] Result<Build> lay(const Plan& plan, const LaySettings& settings, Progress& progress);

inline constexpr const char* stopped_text = "stopped before the wind was complete";

}  // namespace laywright
