#include "measure/severity.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "base/units.h"
#include "measure/acceptance.h"
#include "measure/grade.h"

namespace laywright {

namespace {

// From here on it shows on the spool without being looked for.
constexpr double seen_ride_up_d = 3.0, seen_gap_d = 3.0, seen_hole_d = 4.0;
constexpr double notable_share = 0.1;

FindingSeverity from(Grade grade) {
  switch (grade) {
    case Grade::good: return FindingSeverity::small;
    case Grade::marginal: return FindingSeverity::worth_a_look;
    case Grade::do_not_wind: return FindingSeverity::grave;
  }
  return FindingSeverity::small;
}

// A figure to its limit; 0 where there is none.
double strain(const std::optional<double>& limit, double value) {
  if (!limit || value <= 0.0) return 0.0;
  return *limit > 0.0 ? value / *limit : std::numeric_limits<double>::infinity();
}

struct Weight {
  FindingSeverity severity = FindingSeverity::small;
  double strain = 0.0;  // of what makes it so severe

  [[nodiscard]] bool operator>(const Weight& other) const {
    if (severity != other.severity) return severity > other.severity;
    return severity == FindingSeverity::grave && strain > other.strain;
  }
};

Weight against(const std::optional<double>& limit, double value, Grade at_worst = Grade::do_not_wind) {
  if (!limit) return {};
  return {from(grade_at_most(value, *limit, at_worst)), strain(limit, value)};
}

Weight seen(bool weighed, double size_d, double seen_d) {
  return {weighed && size_d >= seen_d ? FindingSeverity::worth_a_look : FindingSeverity::small, 0.0};
}

Weight by_size(const Acceptance& accepted, const Finding& finding) {
  const double size = finding.size_d;
  switch (finding.kind) {
    case FindingKind::rim_overrun: return {FindingSeverity::grave, std::numeric_limits<double>::infinity()};
    case FindingKind::pile_up: return against(accepted.ridge_d, size);
    case FindingKind::edge_valley: return against(accepted.valley_d, size);
    case FindingKind::flange_gap: return against(accepted.flange_gap_d, size);
    case FindingKind::dropped_turn: return against(accepted.drop_depth_d, size);
    case FindingKind::ribbon: return against(accepted.ribbon_d, size);
    case FindingKind::ride_up: return seen(accepted.ride_ups_per_km.has_value(), size, seen_ride_up_d);
    case FindingKind::gap: return seen(accepted.open_gaps.has_value(), size, seen_gap_d);
    // Where turns cross far apart, each crossing leaves one.
    case FindingKind::bridge: return seen(accepted.open_gaps.has_value(), size, seen_hole_d);
  }
  return {};
}

// Of a kind as a whole.
Weight by_number(const Acceptance& accepted, const Build& build, const Measurements& m, FindingKind kind) {
  switch (kind) {
    case FindingKind::dropped_turn:
      return against(accepted.dropped_turns_per_km, places_per_km(build, m, kind), accepted.disorder);
    case FindingKind::ride_up:
      return against(accepted.ride_ups_per_km, places_per_km(build, m, kind), accepted.disorder);
    case FindingKind::gap: return against(accepted.open_gaps, share_beside_gaps(build, m));
    default: return {};
  }
}

Weight weight_of(const Acceptance& accepted, const Build& build, const Measurements& m, const Finding& finding) {
  const Weight alone = by_size(accepted, finding);
  const bool notable = finding.occurrences >= notable_share * places_of(m, finding.kind);
  const Weight together = by_number(accepted, build, m, finding.kind);
  return notable && together > alone ? together : alone;
}

}  // namespace

const char* name_of(FindingSeverity severity) {
  switch (severity) {
    case FindingSeverity::small: return "small";
    case FindingSeverity::worth_a_look: return "worth a look";
    case FindingSeverity::grave: return "grave";
  }
  return "";
}

int places_of(const Measurements& measurements, FindingKind kind) {
  int places = 0;
  for (const Finding& finding : measurements.findings) places += finding.kind == kind ? finding.occurrences : 0;
  return places;
}

double places_per_km(const Build& build, const Measurements& measurements, FindingKind kind) {
  return build.length_mm > 0.0 ? places_of(measurements, kind) / build.length_mm * mm_per_km : 0.0;
}

double share_beside_gaps(const Build& build, const Measurements& measurements) {
  double beside_mm = 0.0;
  for (const LayerRow& layer : measurements.layers) beside_mm += layer.gap_length_mm;
  return build.length_mm > 0.0 ? beside_mm / build.length_mm : 0.0;
}

double largest_d(const Measurements& measurements, FindingKind kind) {
  double largest = 0.0;
  for (const Finding& finding : measurements.findings) {
    if (finding.kind == kind) largest = std::max(largest, finding.size_d);
  }
  return largest;
}

void set_severities(const Plan& plan, const Build& build, Measurements& measurements) {
  const Acceptance accepted = acceptance_of(plan);
  std::vector<std::pair<Weight, Finding>> weighed;
  for (const Finding& finding : measurements.findings) {
    weighed.emplace_back(weight_of(accepted, build, measurements, finding), finding);
    weighed.back().second.severity = weighed.back().first.severity;
  }
  // Those of a kind stay together, in their own order.
  std::map<FindingKind, double> furthest;
  for (const auto& [weight, finding] : weighed) {
    if (weight.severity != FindingSeverity::grave) continue;
    double& strain = furthest[finding.kind];
    strain = std::max(strain, weight.strain);
  }
  for (auto& [weight, finding] : weighed) {
    if (weight.severity == FindingSeverity::grave) weight.strain = furthest[finding.kind];
  }
  std::stable_sort(weighed.begin(), weighed.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  for (std::size_t i = 0; i < weighed.size(); ++i) measurements.findings[i] = std::move(weighed[i].second);
}

}  // namespace laywright
