// A finding as it can be looked for again in another build of a similar plan, in which it
// may be split, merged or somewhat elsewhere.
#pragma once

#include <optional>
#include <vector>

#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright {

// Findings of a kind in a part of the width; the parts end at its quarters, so that a finding that moves a little
// stays in its part.
struct SoughtFinding {
  FindingKind kind = FindingKind::gap;
  std::optional<Side> side;
  double from_mm = 0.0, to_mm = 0.0;
};

[[nodiscard]] SoughtFinding sought_finding(const Plan& plan, const Finding& finding);

// The same at the other flange.
[[nodiscard]] SoughtFinding mirrored(const SoughtFinding& sought, double width_mm);

struct FindingAmount {
  double places = 0.0;  // of findings that reach beyond the part, the share that lies in it
  double worst_mm = 0.0;
  double gravity = 0.0;  // what is compared: each place counts by the square of its size in d
};

[[nodiscard]] FindingAmount amount_of(const SoughtFinding& sought, const std::vector<Finding>& findings);

// The same over all findings, but for gaps that the plan's pitch makes; in a crossed wind, but for all gaps.
[[nodiscard]] double gravity_of_all(const Plan& plan, const std::vector<Finding>& findings);

}  // namespace laywright
