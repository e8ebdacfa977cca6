#include "advise/outcome.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/units.h"
#include "measure/gravity.h"

namespace laywright {
namespace {

// The taper of the barrel is no deviation: what the barrel itself rises from the middle to the edge is taken off.
double edge_deviation(const Spool& spool, const OuterDiameter& outer) {
  constexpr double edge_to_middle = 0.475;  // of the width: the edge zone is its first 5 %
  const double rise = spool.barrel_taper_mm * edge_to_middle;
  return 0.5 * std::max(std::abs(outer.left_mm + rise - outer.middle_mm),
                        std::abs(outer.right_mm - rise - outer.middle_mm));
}

template <class Number>
double of_payoff(const Outcome& outcome, Number Outcome::Payoff::*figure) {
  return outcome.payoff ? static_cast<double>(*outcome.payoff.*figure) : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace

int Outcome::places() const {
  int sum = 0;
  for (const Flaw& flaw : flaws) sum += flaw.places;
  return sum;
}

std::vector<FindingKind> kinds_that_grow(const Outcome& before, const Outcome& after, FindingKind but) {
  constexpr double factor = 1.5;
  constexpr int odd_places = 3;
  std::vector<FindingKind> kinds;
  for (std::size_t i = 0; i < finding_kinds; ++i) {
    const auto kind = static_cast<FindingKind>(i);
    const Flaw &was = before.of(kind), &is = after.of(kind);
    const bool grows = is.places * is.worst_mm > factor * was.places * was.worst_mm &&
                       is.places > was.places + (was.places > 0 ? odd_places : 0);
    if (kind != but && grows) kinds.push_back(kind);
  }
  return kinds;
}

Outcome outcome_of(const Plan& plan, const Build& build, const Measurements& measurements) {
  Outcome out;
  out.turns = build.turns;
  out.length_mm = build.length_mm;
  out.layers = static_cast<int>(measurements.layers.size());
  out.stopped_by = build.stopped_by;
  out.outer_diameter = measurements.outer_diameter;
  out.fill_factor = measurements.fill_factor;
  out.rim_clearance_mm = measurements.rim_clearance_mm;
  const Spool& spool = plan.spool();
  const double depth = 0.5 * (spool.flange_diameter_mm - spool.barrel_diameter_mm);
  out.rim_use = 1.0 - out.rim_clearance_mm / depth;
  for (const LayerRow& row : measurements.layers) {
    out.gap_length_mm += row.gap_length_mm;
    out.flange_gap_length_mm += row.flange_gap_length_mm;
  }
  out.edge_deviation_mm = edge_deviation(spool, measurements.outer_diameter);
  for (const EdgeShape& edge : measurements.edges.value_or(EdgeShapes{})) {
    out.ridge_mm = std::max(out.ridge_mm, edge.ridge_mm);
    out.valley_mm = std::max(out.valley_mm, edge.valley_mm);
  }
  for (const Finding& finding : measurements.findings) {
    if (finding.kind == FindingKind::gap && is_planned_gap(plan, finding.size_mm)) continue;
    Flaw& flaw = out.flaws[static_cast<std::size_t>(finding.kind)];
    flaw.places += finding.occurrences;
    flaw.worst_mm = std::max(flaw.worst_mm, finding.size_mm);
  }
  return out;
}

Outcome::Payoff outcome_of(const PayoffRun& run) { return {run.greatest, run.catch_count, run.caught_mm}; }

const std::vector<OutcomeFigure>& outcome_figures() {
  using O = const Outcome&;
  static const std::vector<OutcomeFigure> all{
      {"outer_diameter_left_mm", "outer diameter, left", "mm", 2, [](O o) { return o.outer_diameter.left_mm; }},
      {"outer_diameter_middle_mm", "outer diameter, middle", "mm", 2,
       [](O o) { return o.outer_diameter.middle_mm; }},
      {"outer_diameter_right_mm", "outer diameter, right", "mm", 2, [](O o) { return o.outer_diameter.right_mm; }},
      {"outer_diameter_greatest_mm", "outer diameter, greatest", "mm", 2,
       [](O o) { return o.outer_diameter.greatest_mm; }},
      {"rim_clearance_mm", "rim clearance", "mm", 2, [](O o) { return o.rim_clearance_mm; }},
      {"rim_use", "depth used", "", 3, [](O o) { return o.rim_use; }},
      {"gap_length_m", "fiber beside open gaps", "m", 1, [](O o) { return o.gap_length_mm / mm_per_m; }},
      {"flange_gap_length_m", "fiber beside gaps at flanges", "m", 1,
       [](O o) { return o.flange_gap_length_mm / mm_per_m; }},
      {"pile_up_mm", "height of pile-ups", "mm", 2, [](O o) { return o.of(FindingKind::pile_up).worst_mm; }},
      {"pile_up_places", "pile-ups, layers and sides", "", 0,
       [](O o) { return static_cast<double>(o.of(FindingKind::pile_up).places); }},
      {"flange_gap_places", "flange gaps", "", 0,
       [](O o) { return static_cast<double>(o.of(FindingKind::flange_gap).places); }},
      {"rim_overrun_places", "rim overruns", "", 0,
       [](O o) { return static_cast<double>(o.of(FindingKind::rim_overrun).places); }},
      {"edge_deviation_mm", "edge off the middle", "mm", 3, [](O o) { return o.edge_deviation_mm; }},
      {"ridge_mm", "ridge at a flange", "mm", 3, [](O o) { return o.ridge_mm; }},
      {"valley_mm", "valley at a flange", "mm", 3, [](O o) { return o.valley_mm; }},
      {"payoff_force", "pull to draw it off, greatest", "times", 2,
       [](O o) { return of_payoff(o, &Outcome::Payoff::greatest); }},
      {"payoff_catches", "catches when drawn off", "", 0,
       [](O o) { return of_payoff(o, &Outcome::Payoff::catches); }},
      {"payoff_caught_m", "fiber that catches", "m", 1,
       [](O o) { return of_payoff(o, &Outcome::Payoff::caught_mm) / mm_per_m; }},
      {"fill_factor", "fill factor", "", 4, [](O o) { return o.fill_factor; }},
      {"places", "places with findings", "", 0, [](O o) { return static_cast<double>(o.places()); }},
      {"turns", "turns", "", 1, [](O o) { return o.turns; }},
      {"layers", "layers", "", 0, [](O o) { return static_cast<double>(o.layers); }},
      {"length_m", "fiber", "m", 1, [](O o) { return o.length_mm / mm_per_m; }},
  };
  return all;
}

const OutcomeFigure* find_outcome_figure(std::string_view key) {
  const auto& all = outcome_figures();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const OutcomeFigure& each) { return each.key == key; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace laywright
