#include "advise/judged.h"

#include "takeup/takeup_run.h"

namespace laywright {

std::optional<Judged> judge_plan(const PlanDraft& draft, const LaySettings& settings, Progress& progress,
                                 DrawOff way) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) return std::nullopt;
  const Result<Build> build = lay(plan.value(), settings, progress);
  if (!build.ok()) return std::nullopt;
  const Measurements measurements = measure(plan.value(), build.value(), progress);
  if (progress.cancelled()) return std::nullopt;
  const TakeupRun run = take_up(plan.value(), build.value(), measurements, progress);
  if (progress.cancelled()) return std::nullopt;
  Judged judged{outcome_of(plan.value(), build.value(), measurements),
                verdict_of(plan.value(), build.value(), measurements, &run)};
  if (way == DrawOff::side) {
    if (run.payoff) judged.outcome.payoff = outcome_of(*run.payoff);
    return judged;
  }
  PayoffSettings over_end;
  over_end.way = way;
  judged.outcome.payoff = outcome_of(pay_off(plan.value(), build.value(), over_end, progress));
  if (progress.cancelled()) return std::nullopt;
  return judged;
}

}  // namespace laywright
