#include "follow/forecast.h"

#include <utility>

#include "advise/merit.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

// One draw of a wind; of the first, the build is kept.
struct Drawn {
  std::shared_ptr<const Build> build;
  std::shared_ptr<const Measurements> measurements;
  std::shared_ptr<const TakeupRun> run;
  Outcome outcome;
  WindVerdict verdict;
};

std::optional<Drawn> draw(const TrialOrder& order, bool keep, Progress& progress) {
  const Result<Plan> plan = check(order.draft);
  if (!plan.ok()) return std::nullopt;
  Result<Build> laid = lay(plan.value(), order.settings, progress);
  if (!laid.ok()) return std::nullopt;
  const auto build = std::make_shared<const Build>(std::move(laid).value());
  const auto measurements = std::make_shared<const Measurements>(measure(plan.value(), *build, progress));
  if (progress.cancelled()) return std::nullopt;
  const auto run = std::make_shared<const TakeupRun>(take_up(plan.value(), *build, *measurements, progress));
  if (progress.cancelled()) return std::nullopt;
  Drawn drawn;
  drawn.outcome = outcome_of(plan.value(), *build, *measurements);
  drawn.verdict = verdict_of(plan.value(), *build, *measurements, run.get());
  if (keep) {
    drawn.build = build;
    drawn.measurements = measurements;
    drawn.run = run;
  }
  return drawn;
}

double cost_of(const Plan& plan, const Drawn& drawn) {
  Trial trial;
  trial.outcome = drawn.outcome;
  for (const Check& check : drawn.verdict.checks) {
    if (depends_on_lay(check.what)) trial.checks.push_back(check);
    if (depends_on_tension(check.what)) trial.pull.push_back(check);
  }
  return laywright::cost_of(merit_of(plan, trial), std::nullopt);
}

std::optional<Forecast> gathered(const Plan& plan, const MidwindChange& change,
                                 const std::vector<TrialOrder>& orders, std::vector<std::optional<Drawn>> drawn) {
  if (!drawn.front()) return std::nullopt;
  std::vector<std::optional<WindVerdict>> verdicts;
  double cost = 0.0, laid = 0.0;
  for (const std::optional<Drawn>& each : drawn) {
    verdicts.push_back(each ? std::optional(each->verdict) : std::nullopt);
    if (!each) continue;
    cost += cost_of(plan, *each);
    laid += 1.0;
  }
  Drawn& first = *drawn.front();
  return Forecast{plan,
                  change,
                  std::move(first.build),
                  std::move(first.measurements),
                  std::move(first.run),
                  first.outcome,
                  worst_of(plan, orders, verdicts),
                  cost / laid};
}

}  // namespace

std::vector<std::optional<Forecast>> forecast(const Plan& plan, const std::vector<MidwindChange>& changes,
                                              const LaySettings& settings, int draws, int threads,
                                              const Stretch& stretch) {
  const auto each = static_cast<std::size_t>(draws);
  std::vector<std::vector<TrialOrder>> orders;
  std::vector<std::vector<std::optional<Drawn>>> drawn(changes.size(), std::vector<std::optional<Drawn>>(each));
  for (const MidwindChange& change : changes) {
    LaySettings changed = settings;
    changed.change = change;
    orders.push_back(draws_of(plan.draft(), changed, draws));
  }
  run_parallel(changes.size() * each, threads, stretch, [&](std::size_t i, Progress& inner) {
    drawn[i / each][i % each] = draw(orders[i / each][i % each], i % each == 0, inner);
  });
  std::vector<std::optional<Forecast>> all(changes.size());
  if (stretch.progress.cancelled()) return all;
  for (std::size_t c = 0; c < changes.size(); ++c)
    all[c] = gathered(plan, changes[c], orders[c], std::move(drawn[c]));
  return all;
}

}  // namespace laywright
