#include "advise/draws.h"

#include <algorithm>
#include <utility>

namespace laywright {

PlanDraft shifted(PlanDraft draft, double shift_d) {
  const double shift = shift_d * draft.fiber.diameter_mm;
  draft.traverse.left_stop_mm += shift;
  draft.traverse.right_stop_mm -= shift;
  for (WindStep& step : draft.wind.steps) {
    if (step.left_stop_mm) *step.left_stop_mm += shift;
    if (step.right_stop_mm) *step.right_stop_mm -= shift;
  }
  return draft;
}

std::vector<TrialOrder> draws_of(const PlanDraft& draft, const LaySettings& settings, int count, int first) {
  std::vector<TrialOrder> orders;
  for (int i = first; i < first + count; ++i) {
    TrialOrder order{draft, settings};
    order.settings.seed += static_cast<std::uint64_t>(i);
    // 0, +1, -1, +2, -2 ...
    order.draft = shifted(std::move(order.draft), draw_shift_d * (i % 2 == 1 ? (i + 1) / 2 : -(i / 2)));
    orders.push_back(std::move(order));
  }
  return orders;
}

void add_draw(MeanAmount& mean, const Plan& plan, const SoughtFinding& sought,
              const std::vector<Finding>& findings) {
  const FindingAmount amount = amount_of(sought, findings);
  const double before = mean.draws, now = ++mean.draws;
  const auto add = [&](double& value, double one) { value = (value * before + one) / now; };
  add(mean.of_sought.places, amount.places);
  add(mean.of_sought.gravity, amount.gravity);
  add(mean.gravity_of_all, gravity_of_all(plan, findings));
  mean.of_sought.worst_mm = std::max(mean.of_sought.worst_mm, amount.worst_mm);
}

std::optional<MeanAmount> mean_amount(const Plan& plan, const SoughtFinding& sought,
                                      const std::vector<std::optional<Trial>>& trials, std::size_t begin,
                                      int count) {
  MeanAmount mean;
  for (std::size_t i = begin; i < begin + static_cast<std::size_t>(count); ++i) {
    if (!trials[i]) return std::nullopt;
    add_draw(mean, plan, sought, trials[i]->findings);
  }
  return mean;
}

}  // namespace laywright
