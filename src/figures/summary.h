// The result of a wind as text for a terminal: what was wound, what came out, the layers, the findings.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <string>

#include "lay/build.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"
#include "takeup/takeup_run.h"
#include "verdict/verdict.h"

namespace laywright {

struct SummaryStyle {
  static constexpr std::size_t all = std::numeric_limits<std::size_t>::max();

  std::size_t most_layers = 24;          // a longer table shows its first and last rows
  std::size_t most_findings = 8;         // of the gravest
  std::string whole_lists_in;            // where the person finds the rest, as in "the rest: ..."; may be empty
  std::optional<WindVerdict> verdict{};  // over draws; none: on this build alone
};

// Plain ASCII of at most 100 columns (a title or file name may be longer), each figure with its unit; ends
// with a line feed.
[[nodiscard]] std::string summary_text(const Plan& plan, const Build& build, const Measurements& measurements,
                                       const TakeupRun& run, const SummaryStyle& style = {});

}  // namespace laywright
