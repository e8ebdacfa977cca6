// What counts of a build when settings are compared: a handful of figures, each with one definition.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lay/build.h"
#include "measure/measurements.h"
#include "payoff/payoff.h"
#include "plan/lay_plan.h"

namespace laywright {

inline constexpr std::size_t finding_kinds = 9;

// All findings of one kind.
struct Flaw {
  int places = 0;         // where it occurs
  double worst_mm = 0.0;  // the largest of them
};

struct Outcome {
  double turns = 0.0, length_mm = 0.0;
  int layers = 0;
  StopReason stopped_by = StopReason::length;
  OuterDiameter outer_diameter;
  double fill_factor = 0.0;
  double rim_clearance_mm = 0.0;
  double rim_use = 0.0;                     // share of the depth between barrel and rim that the highest fiber takes
  double gap_length_mm = 0.0;               // fiber length beside an open gap, at a flange or not
  double flange_gap_length_mm = 0.0;        // at a flange
  double edge_deviation_mm = 0.0;           // the greater of both edges' height over, or depth under, the middle
  double ridge_mm = 0.0, valley_mm = 0.0;   // the greater of both sides'; 0 where no layer is whole
  std::array<Flaw, finding_kinds> flaws{};  // by FindingKind; gaps that the pitch makes do not count

  // How it comes off again, where that was computed.
  struct Payoff {
    double greatest = 1.0;   // in times the pull of winding
    int catches = 0;         // places that need more than the plan's limit
    double caught_mm = 0.0;  // and how much of the fiber does
  };
  std::optional<Payoff> payoff;

  [[nodiscard]] const Flaw& of(FindingKind kind) const { return flaws[static_cast<std::size_t>(kind)]; }
  // Of all kinds.
  [[nodiscard]] int places() const;
};

// The kinds, but for one, of which there is notably more than before: half as much again, and more than odd places.
[[nodiscard]] std::vector<FindingKind> kinds_that_grow(const Outcome& before, const Outcome& after, FindingKind but);

// Precondition: the measurements are of that build, and it was laid from that plan.
[[nodiscard]] Outcome outcome_of(const Plan& plan, const Build& build, const Measurements& measurements);

[[nodiscard]] Outcome::Payoff outcome_of(const PayoffRun& run);

// The figures of an outcome as columns of a table and axes of a map.
struct OutcomeFigure {
  std::string_view key;           // "outer_diameter_greatest_mm"
  std::string_view words;         // "outer diameter, greatest"
  std::string_view unit;          // "mm"; empty for a pure number
  int decimals;                   // that a person needs
  double (*get)(const Outcome&);  // not a number where it was not computed
};
[[nodiscard]] const std::vector<OutcomeFigure>& outcome_figures();

// Null if there is none of that key.
[[nodiscard]] const OutcomeFigure* find_outcome_figure(std::string_view key);

}  // namespace laywright
