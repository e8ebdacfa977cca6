// What a finished study of tolerances says.
#pragma once

#include <array>
#include <vector>

#include "advise/sobol_shares.h"
#include "advise/study.h"

namespace laywright {

// How many of some rows are of which grade.
struct GradeCount {
  std::array<std::size_t, 3> of{};  // by Grade
  std::size_t without = 0;          // not sound, or without a verdict

  void add(const StudyRow& row) { row.verdict ? ++of[static_cast<std::size_t>(row.verdict->grade)] : ++without; }
  [[nodiscard]] std::size_t good() const { return of[static_cast<std::size_t>(Grade::good)]; }
  [[nodiscard]] std::size_t judged() const { return of[0] + of[1] + of[2]; }
};
[[nodiscard]] GradeCount count_grades(const std::vector<StudyRow>& rows);

struct FigureSpread {
  std::size_t figure = 0;  // of outcome_figures()
  double p5 = 0.0, p50 = 0.0, p95 = 0.0;
};

struct ToleranceStatistics {
  std::size_t winds = 0;  // independent ones: two of each sample
  std::vector<FigureSpread> spreads;
  GradeCount grades;
  // Share of the winds that are good, and a 95 % interval of it (Wilson 1927); those without a verdict do not count.
  double good_share = 0.0;
  std::array<double, 2> good_interval{};
  std::vector<SobolShare> shares;  // of the greatest outer diameter, by tolerance; empty where it does not vary
};

// The first two rows of each sample of tolerances; the others are made of them.
[[nodiscard]] bool is_independent(const Study& study, const StudyRow& row);

// Precondition: a complete study of tolerances.
[[nodiscard]] ToleranceStatistics tolerance_statistics(const Study& study);

}  // namespace laywright
