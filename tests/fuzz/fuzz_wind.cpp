// The whole way: a small sound plan is laid and measured, and what the model promises for every plan is checked.
// With FUZZ_SHOW=1 in the environment the plan is printed first, to be laid by hand.
#include <cstdint>
#include <cstdlib>
#include <utility>

#include <fmt/format.h>

#include "base/progress.h"
#include "fuzz/bytes.h"
#include "fuzz/clean_issue.h"
#include "fuzz/drawn_plan.h"
#include "fuzz/oracles.h"
#include "fuzz/require.h"
#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"
#include "plan/size_estimate.h"

using namespace laywright;
using fuzz::require;

namespace {

constexpr double most_nodes = 6'000.0;
// Of a turn: each has a surface of its own to be measured, however short the wind.
constexpr double most_stations_here = 1'000.0;
// A wind by diameter is estimated at the tightest packing.
constexpr double estimate_slack = 1.3;

Build laid(const Plan& plan, const LaySettings& settings) {
  Progress progress;
  Result<Build> build = lay(plan, settings, progress);
  require(build.ok(), "a sound plan can be laid");
  return std::move(build).value();
}

void show(const fuzz::DrawnWind& wind, const Issues& issues) {
  fmt::print(stderr, "{}# --fidelity {} --seed {}\n", write_plan(wind.draft), wind.settings.fidelity,
             wind.settings.seed);
  for (const Issue& issue : issues) fmt::print(stderr, "# {}\n", to_text(issue));
}

void require_saved(const Plan& plan) {
  const Result<PlanDraft> again = read_plan(write_plan(plan.draft()), "");
  require(again.ok() && same_plan(again.value(), plan.draft()), "a plan that is saved reads back");
}

void require_wind(const Plan& plan, const LaySettings& settings) {
  const Build build = laid(plan, settings);
  fuzz::require_build(plan, build);
  require(laid(plan, settings).hash() == build.hash(), "the same plan and seed give the same bits");
  Progress progress;
  fuzz::require_measurements(plan, build, measure(plan, build, progress));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  fuzz::Bytes bytes({data, size});
  const fuzz::DrawnWind wind = fuzz::drawn_wind(bytes, most_nodes);
  const Result<Plan> plan = check(wind.draft);
  fuzz::require_clean(plan.issues());
  if (std::getenv("FUZZ_SHOW") != nullptr) show(wind, plan.issues());
  if (!plan.ok()) return 0;
  require_saved(plan.value());
  const double stations = stations_needed(plan.value()) * wind.settings.fidelity;
  if (stations > most_stations_here || turns_estimate(wind.draft) * stations > estimate_slack * most_nodes) return 0;
  require_wind(plan.value(), wind.settings);
  return 0;
}
