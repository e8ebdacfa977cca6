#include "advise/merit.h"

#include <algorithm>

#include "verdict/weigh.h"

namespace laywright {

Merit merit_of(const Plan& plan, const Trial& trial) {
  // Beyond it a figure is no worse: a limit of 0 makes any figure infinitely so.
  constexpr double most = 100.0;
  const auto share_of = [most](const Check& check) { return std::min(most, strain_of(check) / good_up_to(check)); };
  Merit merit;
  for (const Check& check : trial.pull) {
    merit.pull = std::max(merit.pull, check.grade);
    merit.past_good += std::max(0.0, share_of(check) - 1.0);
  }
  for (const Check& check : trial.checks) {
    const double share = share_of(check);
    merit.grade = std::max(merit.grade, check.grade);
    merit.past_good += std::max(0.0, share - 1.0);
    merit.load += std::min(1.0, share * share);
  }
  const Outcome& outcome = trial.outcome;
  merit.gap_share = outcome.length_mm > 0.0 ? outcome.gap_length_mm / outcome.length_mm : 0.0;
  merit.edge_deviation_d = outcome.edge_deviation_mm / plan.fiber().diameter_mm;
  merit.rim_use = outcome.rim_use;
  return merit;
}

double cost_of(const Merit& merit, const std::optional<MeritWeights>& weights) {
  constexpr double before_all_else = 1e3, percent = 100.0;
  const double past_good = before_all_else * merit.past_good;
  if (!weights) return past_good + merit.load;
  return past_good + weights->gap_length * percent * merit.gap_share +
         weights->edge_deviation * merit.edge_deviation_d + weights->rim_use * percent * merit.rim_use;
}

}  // namespace laywright
