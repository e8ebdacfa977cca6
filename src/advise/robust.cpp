#include "advise/robust.h"

#include <algorithm>

#include "verdict/verdict_words.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

DrawSeen seen(const TrialOrder& order, const WindVerdict& verdict) {
  return {order.settings.seed, order.draft.fiber.diameter_mm, verdict.grade,
          name_of(verdict.checks[verdict.deciding])};
}

}  // namespace

std::vector<TrialOrder> robust_orders(const PlanDraft& draft, const LaySettings& settings, int count) {
  std::vector<TrialOrder> orders = draws_of(draft, settings, count);
  for (int i = 1; i < count; ++i) {
    const double share = (i - 0.5) / (count - 1);  // the middle of its part
    Fiber& fiber = orders[static_cast<std::size_t>(i)].draft.fiber;
    fiber.diameter_mm += fiber.diameter_tolerance_mm * (2.0 * share - 1.0);
  }
  return orders;
}

WindVerdict worst_of(const Plan& plan, const std::vector<TrialOrder>& orders,
                     const std::vector<std::optional<WindVerdict>>& verdicts) {
  WindVerdict whole = *verdicts.front();
  const WindVerdict* worst = &*verdicts.front();
  const Product product = product_of(plan);
  const auto rank = [&](const WindVerdict& verdict) { return rank_of(verdict.checks[verdict.deciding], product); };
  for (std::size_t i = 0; i < orders.size(); ++i) {
    if (!verdicts[i]) continue;
    whole.draws.push_back(seen(orders[i], *verdicts[i]));
    if (rank(*verdicts[i]) > rank(*worst)) worst = &*verdicts[i];
  }
  whole.grade = worst->grade;
  whole.reason = worst->reason;
  whole.first = worst->first;
  return whole;
}

std::optional<WindVerdict> over_draws(const Plan& plan, const LaySettings& settings, const WindVerdict& first,
                                      int count, int threads, const Stretch& stretch) {
  const std::vector<TrialOrder> orders = robust_orders(plan.draft(), settings, count);
  std::vector<std::optional<WindVerdict>> verdicts(orders.size());
  verdicts[0] = first;
  run_parallel(orders.size() - 1, threads, stretch, [&](std::size_t i, Progress& inner) {
    const TrialOrder& order = orders[i + 1];
    if (std::optional<Judged> judged = judge_plan(order.draft, order.settings, inner))
      verdicts[i + 1] = std::move(judged->verdict);
  });
  if (stretch.progress.cancelled()) return std::nullopt;
  return worst_of(plan, orders, verdicts);
}

}  // namespace laywright
