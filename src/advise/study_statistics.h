// What a finished study of tolerances says.
#pragma once

#include <array>
#include <vector>

#include "advise/sobol_shares.h"
#include "advise/study.h"

namespace laywright {

struct FigureSpread {
  std::size_t figure = 0;  // of outcome_figures()
  double p5 = 0.0, p50 = 0.0, p95 = 0.0;
};

struct ToleranceStatistics {
  std::size_t winds = 0;  // independent ones: two of each sample
  std::vector<FigureSpread> spreads;
  // Share of the winds that keep the plan's limits (no pile-up, no flange gap, no rim overrun, rim clearance), and a
  // 95 % interval of it (Wilson 1927).
  double pass_share = 0.0;
  std::array<double, 2> pass_interval{};
  std::vector<SobolShare> shares;  // of the greatest outer diameter, by tolerance; empty where it does not vary
};

// Precondition: a complete study of tolerances.
[[nodiscard]] ToleranceStatistics tolerance_statistics(const Study& study);

// Whether a row keeps the plan's limits; a row that could not be laid does not.
[[nodiscard]] bool keeps_limits(const Study& study, const StudyRow& row);

}  // namespace laywright
