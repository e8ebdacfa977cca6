#include "advise/study_statistics.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace laywright {
namespace {

// Wilson's score interval of a share, 95 %.
std::array<double, 2> wilson(double share, double count) {
  constexpr double z = 1.959964;
  const double middle = (share + z * z / (2.0 * count)) / (1.0 + z * z / count);
  const double half =
      z / (1.0 + z * z / count) * std::sqrt(share * (1.0 - share) / count + z * z / (4.0 * count * count));
  return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

}  // namespace

GradeCount count_grades(const std::vector<StudyRow>& rows) {
  GradeCount count;
  for (const StudyRow& row : rows) count.add(row);
  return count;
}

bool is_independent(const Study& study, const StudyRow& row) {
  return row.index % (study.spec.tolerances.size() + 2) < 2;
}

ToleranceStatistics tolerance_statistics(const Study& study) {
  ToleranceStatistics statistics;
  std::vector<const StudyRow*> independent;
  for (const StudyRow& row : study.rows) {
    if (!is_independent(study, row)) continue;
    statistics.grades.add(row);
    if (!row.figures.empty()) independent.push_back(&row);
  }
  statistics.winds = independent.size();
  if (const auto judged = static_cast<double>(statistics.grades.judged()); judged > 0.0) {
    statistics.good_share = static_cast<double>(statistics.grades.good()) / judged;
    statistics.good_interval = wilson(statistics.good_share, judged);
  }
  for (std::size_t f = 0; f < outcome_figures().size() && !independent.empty(); ++f) {
    std::vector<double> values;
    for (const StudyRow* row : independent) values.push_back(row->figures[f]);
    statistics.spreads.push_back({f, quantile(values, 0.05), quantile(values, 0.5), quantile(values, 0.95)});
  }
  const std::size_t greatest = Study::figure("outer_diameter_greatest_mm");
  std::vector<double> outputs;
  for (const StudyRow& row : study.rows) {
    outputs.push_back(row.figures.empty() ? std::numeric_limits<double>::quiet_NaN() : row.figures[greatest]);
  }
  statistics.shares = sobol_shares(outputs, study.spec.tolerances.size(), study.spec.lay.seed);
  return statistics;
}

}  // namespace laywright
