#include "advise/trial.h"

#include <utility>

#include "measure/measurements.h"
#include "plan/plan_values.h"
#include "verdict/weigh.h"

namespace laywright {

PlanDraft with_changes(PlanDraft draft, const std::vector<Change>& changes) {
  for (const Change& change : changes) set_value(draft, change.path, change.value);
  return draft;
}

std::optional<Trial> try_plan(const PlanDraft& draft, const LaySettings& settings, Progress& progress, bool judged) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) return std::nullopt;
  const Result<Build> build = lay(plan.value(), settings, progress);
  if (!build.ok()) return std::nullopt;
  Measurements measurements = measure(plan.value(), build.value(), progress);
  if (progress.cancelled()) return std::nullopt;
  Trial trial;
  trial.outcome = outcome_of(plan.value(), build.value(), measurements);
  const TakeupRun run = pull_and_speed(plan.value(), build.value(), measurements);
  for (const Check& check : weigh(plan.value(), build.value(), measurements, &run)) {
    if (depends_on_lay(check.what)) trial.checks.push_back(check);
    if (depends_on_tension(check.what)) trial.pull.push_back(check);
  }
  if (judged) {
    const TakeupRun whole = take_up(plan.value(), build.value(), measurements, progress);
    if (progress.cancelled()) return std::nullopt;
    trial.verdict = verdict_of(plan.value(), build.value(), measurements, &whole);
    if (whole.payoff) trial.outcome.payoff = outcome_of(*whole.payoff);
    for (const Check& check : trial.verdict->checks) {
      if (check.what == Weighed::payoff_force) trial.checks.push_back(check);
    }
  }
  trial.findings = std::move(measurements.findings);
  return trial;
}

std::vector<std::optional<Trial>> try_all(const std::vector<TrialOrder>& orders, int threads,
                                          const Stretch& stretch) {
  std::vector<std::optional<Trial>> trials(orders.size());
  run_parallel(orders.size(), threads, stretch, [&](std::size_t i, Progress& inner) {
    trials[i] = try_plan(orders[i].draft, orders[i].settings, inner, orders[i].judged);
  });
  return trials;
}

PlanDraft shortened(PlanDraft draft, double turns) {
  draft.wind.length_mm.reset();
  draft.wind.diameter_mm.reset();
  draft.wind.turns = turns;
  return draft;
}

}  // namespace laywright
