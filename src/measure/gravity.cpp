#include "measure/gravity.h"

#include <algorithm>

namespace laywright {

namespace {

double weight(const Plan& plan, const Finding& finding) {
  switch (finding.kind) {
    case FindingKind::rim_overrun: return 1.0;
    case FindingKind::dropped_turn: return 4.0;
    case FindingKind::ride_up: return 3.0;
    case FindingKind::pile_up: return 2.0;
    case FindingKind::flange_gap: return 2.0;
    case FindingKind::ribbon: return 2.0;
    case FindingKind::edge_valley: return 1.5;
    case FindingKind::bridge: return 1.0;
    case FindingKind::gap: return is_planned_gap(plan, finding.size_mm) ? 0.1 : 1.0;
  }
  return 0.0;
}

}  // namespace

double gravity(const Plan& plan, const Finding& finding) {
  constexpr double most_d = 6.0;
  constexpr double before_all_else = 100.0;
  const double head_start = finding.kind == FindingKind::rim_overrun ? before_all_else : 0.0;
  return head_start + weight(plan, finding) * std::min(finding.size_d, most_d);
}

double planned_gap_mm(const Plan& plan) {
  double pitch = plan.traverse().pitch_mm;
  for (const WindStep& step : plan.wind().steps) pitch = std::max(pitch, step.pitch_mm.value_or(0.0));
  return pitch - plan.fiber().diameter_mm;
}

bool is_planned_gap(const Plan& plan, double gap_mm) {
  // Turns wander by this much before something else must be the cause.
  constexpr double tolerance_d = 0.25, tolerance_share = 0.1;
  const double d = plan.fiber().diameter_mm;
  const double planned = planned_gap_mm(plan);
  return planned > plan.limits().gap_d * d && gap_mm <= (1.0 + tolerance_share) * planned + tolerance_d * d;
}

}  // namespace laywright
