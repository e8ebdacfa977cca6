#include "app/wound_plan.h"

#include <utility>

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

}  // namespace laywright
