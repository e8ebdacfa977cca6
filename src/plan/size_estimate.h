// How large the build of a plan would become, before it is laid: estimates, on the safe side.
#pragma once

#include "plan/lay_plan.h"

namespace laywright {

// A build needs 9 bytes for each turn at each station.
inline constexpr double bytes_per_node = 9.0;
// Builds beyond these are refused.
inline constexpr double most_build_bytes = 4.0 * 1024 * 1024 * 1024;
inline constexpr double most_stations = 100'000.0;

// Stations per turn that the lay model needs, unrounded: four in a crossover, whose angle is about 1.8 sqrt(d / R) at
// the middle radius of the wind, and no more than d/8 of travel relative to the layer below, of the other hand, between
// stations. A stepped guide travels its pitch within the step angle alone.
[[nodiscard]] double stations_estimate(const PlanDraft& draft);

// Turns of the wind: its length at barrel diameter, its turns, or what its diameter takes at the tightest
// packing; and never more than the spool takes at the tightest packing (pi / sqrt(12), hexagonal).
[[nodiscard]] double turns_estimate(const PlanDraft& draft);

[[nodiscard]] double bytes_estimate(const PlanDraft& draft);

}  // namespace laywright
