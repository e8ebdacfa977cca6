// How grave a finding is, to put the gravest first.
#pragma once

#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// Size in d, up to 6 (beyond that more of the same is no worse), times a weight for what the kind does to the
// fiber: a wind that leaves the spool before all else; turns that trap or break fiber at payout; the shape of the
// edges; open places. Turns that stand apart because the plan's pitch says so weigh least.
[[nodiscard]] double gravity(const Plan& plan, const Finding& finding);

// Gap that the plan's own pitch leaves between turns, mm; the widest, when the pitch changes on the way.
[[nodiscard]] double planned_gap_mm(const Plan& plan);

// True when a gap is no wider than the plan's pitch explains.
[[nodiscard]] bool is_planned_gap(const Plan& plan, double gap_mm);

}  // namespace laywright
