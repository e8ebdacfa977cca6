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

bool keeps_limits(const Study& study, const StudyRow& row) {
  if (row.figures.empty()) return false;
  const auto of = [&](std::string_view key) { return row.figures[Study::figure(key)]; };
  return of("pile_up_places") == 0.0 && of("flange_gap_places") == 0.0 && of("rim_overrun_places") == 0.0 &&
         of("rim_clearance_mm") >= study.plan.limits.rim_clearance_mm;
}

ToleranceStatistics tolerance_statistics(const Study& study) {
  ToleranceStatistics statistics;
  const std::size_t inputs = study.spec.tolerances.size(), rows = inputs + 2;
  std::vector<const StudyRow*> independent;
  std::size_t passed = 0, counted = 0;
  for (const StudyRow& row : study.rows) {
    if (row.index % rows > 1) continue;
    ++counted;
    if (keeps_limits(study, row)) ++passed;
    if (!row.figures.empty()) independent.push_back(&row);
  }
  statistics.winds = independent.size();
  statistics.pass_share = static_cast<double>(passed) / static_cast<double>(counted);
  statistics.pass_interval = wilson(statistics.pass_share, static_cast<double>(counted));
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
  statistics.shares = sobol_shares(outputs, inputs, study.spec.lay.seed);
  return statistics;
}

}  // namespace laywright
