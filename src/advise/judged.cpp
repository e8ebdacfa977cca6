#include "advise/judged.h"

#include "takeup/takeup_run.h"

namespace laywright {

std::optional<Judged> judge_plan(const PlanDraft& draft, const LaySettings& settings, Progress& progress) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) return std::nullopt;
  const Result<Build> build = lay(plan.value(), settings, progress);
  if (!build.ok()) return std::nullopt;
  const Measurements measurements = measure(plan.value(), build.value(), progress);
  if (progress.cancelled()) return std::nullopt;
  const TakeupRun run = take_up(plan.value(), build.value(), measurements, progress);
  if (progress.cancelled()) return std::nullopt;
  return Judged{outcome_of(plan.value(), build.value(), measurements),
                verdict_of(plan.value(), build.value(), measurements, &run)};
}

}  // namespace laywright
