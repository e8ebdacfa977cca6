#include "app/wound_plan.h"

#include <utility>

#include <fmt/format.h>

#include "advise/robust.h"
#include "app/number_option.h"

namespace laywright {

WoundPlan lay_and_measure(const Plan& plan, const LaySettings& settings, Watch& watch) {
  Progress& progress = watch.progress();
  watch.begin("laying");
  Result<Build> laid = lay(plan, settings, progress);
  if (progress.cancelled()) return {{exit_stopped, {}, {}}, nullptr, nullptr};
  if (!laid.ok()) return {{exit_unsound, laid.issues(), {}}, nullptr, nullptr};
  WoundPlan wound{{exit_done, laid.issues(), {}}, nullptr, nullptr};

  watch.begin("measuring");
  wound.build = std::make_shared<const Build>(std::move(laid).value());
  wound.measurements = std::make_shared<const Measurements>(measure(plan, *wound.build, progress));
  if (progress.cancelled()) return {{exit_stopped, {}, {}}, nullptr, nullptr};
  return wound;
}

std::optional<WindVerdict> judged_over_draws(const Plan& plan, const LaySettings& settings, const WoundPlan& wound,
                                             const TakeupRun& run, std::optional<int> draws, Watch& watch) {
  WindVerdict first = verdict_of(plan, *wound.build, *wound.measurements, &run);
  const int count = draws.value_or(due_draws(plan.draft()));
  if (count == 1) return first;
  watch.begin("laying other draws");
  return over_draws(plan, settings, first, count, threads_at_hand(), watch.progress());
}

void add_draws_option(CommandLine command, std::optional<int>& draws) {
  command
      .add_option(
          "--draws", draws,
          fmt::format(
              "Judge by the worst of so many winds of the plan, 1 to {}: by other seeds, with the guide "
              "a hundredth of a fiber aside, and fiber within its tolerance. Without it by {} where the plan "
              "states tolerances or scatter, else by one",
              most_draws, usual_draws))
      .type_name("N")
      .check(number_between(1, most_draws));
}

}  // namespace laywright
