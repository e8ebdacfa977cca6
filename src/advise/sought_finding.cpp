#include "advise/sought_finding.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "measure/gravity.h"

namespace laywright {
namespace {

// A wind whose turns lie farther apart than this is filled by the strokes that cross, not by turns side by side.
constexpr double open_wind_d = 5.0;

// Share of the finding's extent in x that lies in the part; a finding of no extent lies in it or not.
double share_within(const SoughtFinding& part, const std::array<double, 2>& x) {
  const double extent = x[1] - x[0];
  if (extent <= 0.0) return x[0] >= part.from_mm && x[0] <= part.to_mm ? 1.0 : 0.0;
  return std::clamp((std::min(x[1], part.to_mm) - std::max(x[0], part.from_mm)) / extent, 0.0, 1.0);
}

}  // namespace

SoughtFinding sought_finding(const Plan& plan, const Finding& finding) {
  const double quarter = plan.spool().inside_width_mm / 4.0;
  constexpr double infinity = std::numeric_limits<double>::infinity();
  SoughtFinding sought{finding.kind, finding.side, -infinity, infinity};
  // Flanges may open, so the outer parts have no end.
  const double from = std::floor(finding.x_mm[0] / quarter), to = std::ceil(finding.x_mm[1] / quarter);
  if (from > 0.0) sought.from_mm = from * quarter;
  if (to < 4.0) sought.to_mm = std::max(1.0, to) * quarter;
  return sought;
}

SoughtFinding mirrored(const SoughtFinding& sought, double width_mm) {
  SoughtFinding other = sought;
  if (sought.side) other.side = *sought.side == Side::left ? Side::right : Side::left;
  other.from_mm = width_mm - sought.to_mm;
  other.to_mm = width_mm - sought.from_mm;
  return other;
}

FindingAmount amount_of(const SoughtFinding& sought, const std::vector<Finding>& findings) {
  FindingAmount amount;
  for (const Finding& finding : findings) {
    if (finding.kind != sought.kind || finding.side != sought.side) continue;
    const double places = finding.occurrences * share_within(sought, finding.x_mm);
    if (places <= 0.0) continue;
    amount.places += places;
    amount.worst_mm = std::max(amount.worst_mm, finding.size_mm);
    amount.gravity += places * finding.size_d * finding.size_d;
  }
  return amount;
}

double gravity_of_all(const Plan& plan, const std::vector<Finding>& findings) {
  const double planned_gap_d = plan.traverse().pitch_mm / plan.fiber().diameter_mm - 1.0;
  const bool crossed = planned_gap_d > open_wind_d;
  double sum = 0.0;
  for (const Finding& finding : findings) {
    if (finding.kind == FindingKind::gap && (crossed || is_planned_gap(plan, finding.size_mm))) continue;
    sum += finding.occurrences * finding.size_d * finding.size_d;
  }
  return sum;
}

}  // namespace laywright
