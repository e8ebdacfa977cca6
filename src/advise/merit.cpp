#include "advise/merit.h"

#include <algorithm>

namespace laywright {

Merit merit_of(const Plan& plan, const Outcome& outcome) {
  const double d = plan.fiber().diameter_mm;
  Merit merit;
  for (const FindingKind kind : {FindingKind::pile_up, FindingKind::flange_gap, FindingKind::rim_overrun}) {
    const Flaw& flaw = outcome.of(kind);
    // A place counts, however small the rim overrun in it.
    merit.beyond_limits_d += flaw.places * std::max(1.0, flaw.worst_mm / d);
  }
  merit.beyond_limits_d += std::max(0.0, plan.limits().rim_clearance_mm - outcome.rim_clearance_mm) / d;
  merit.gap_share = outcome.length_mm > 0.0 ? outcome.gap_length_mm / outcome.length_mm : 0.0;
  merit.edge_deviation_d = outcome.edge_deviation_mm / d;
  merit.rim_use = outcome.rim_use;
  return merit;
}

double cost_of(const Merit& merit, const std::optional<MeritWeights>& weights) {
  constexpr double before_all_else = 1e6;
  constexpr double percent = 100.0;
  const double beyond = before_all_else * merit.beyond_limits_d;
  if (weights) {
    return beyond + weights->gap_length * percent * merit.gap_share +
           weights->edge_deviation * merit.edge_deviation_d + weights->rim_use * percent * merit.rim_use;
  }
  // In units of what makes no difference to anybody; each unit is worth thirty of the next.
  constexpr double gap_unit = 0.001, edge_unit_d = 0.1, rim_unit = 0.005, order = 30.0;
  return beyond + order * order * merit.gap_share / gap_unit + order * merit.edge_deviation_d / edge_unit_d +
         merit.rim_use / rim_unit;
}

}  // namespace laywright
