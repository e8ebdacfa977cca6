#include "advise/begin.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "advise/judged.h"
#include "advise/late_settings.h"
#include "advise/robust.h"
#include "advise/setting_text.h"
#include "base/decimal.h"
#include "base/round_figure.h"
#include "plan/fields.h"
#include "verdict/usual_settings.h"

namespace laywright {
namespace {

// Of the way where something has to be searched for.
constexpr double searched_all = 0.85;

bool is_open(const BeginSettings& settings, std::string_view path) {
  return std::find(settings.given.begin(), settings.given.end(), path) == settings.given.end();
}

// Without what computing leaves behind the last place that is set.
double neat(double value) {
  constexpr std::size_t digits = 9;
  return to_double(rounded(shortest_decimal(value), digits)).value_or(value);
}

// As a person would set it: to a fiftieth of the fiber or finer.
double set_by_hand(double value_mm, double d_mm) {
  const double step = round_figure_below(d_mm / 50.0);
  return neat(std::round(value_mm / step) * step);
}

PlanDraft neat(const PlanDraft& from, PlanDraft target) {
  for (const auto& field : plan_fields()) {
    const std::optional<double> value = field.get(target);
    if (value && value != field.get(from)) field.set(target, neat(*value));
  }
  for (WindStep& step : target.wind.steps) {
    for (const auto& field : step_fields()) {
      if (const std::optional<double> value = field.get(step)) field.set(step, neat(*value));
    }
  }
  return target;
}

PlanDraft with_usual_settings(PlanDraft draft, const BeginSettings& settings) {
  const double d = draft.fiber.diameter_mm;
  if (is_open(settings, "traverse.pitch")) draft.traverse.pitch_mm = set_by_hand(usual_pitch_mm(draft), d);
  const double stop = set_by_hand(ideal_stop_mm(draft, draft.traverse.pitch_mm), d);
  if (is_open(settings, "traverse.left_stop")) draft.traverse.left_stop_mm = stop;
  if (is_open(settings, "traverse.right_stop")) draft.traverse.right_stop_mm = stop;
  return draft;
}

// Over its draws; none when cancelled.
Result<WindVerdict> judged(const PlanDraft& draft, const BeginSettings& settings, const Stretch& stretch) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) return plan.issues();
  const double half = stretch.from + (stretch.to - stretch.from) / usual_draws;
  std::optional<Judged> first;
  run_parallel(1, 1, {stretch.progress, stretch.from, half},
               [&](std::size_t, Progress& inner) { first = judge_plan(draft, settings.lay, inner); });
  if (stretch.progress.cancelled()) return stopped();
  if (!first) {
    // To be told why.
    Progress none;
    const Result<Build> build = lay(plan.value(), settings.lay, none);
    return build.ok() ? Result<WindVerdict>(option_issue("", "", "could not be laid and judged")) : build.issues();
  }
  const int draws = settings.draws > 0 ? settings.draws : usual_draws;
  if (draws == 1) return first->verdict;
  std::optional<WindVerdict> all = over_draws(plan.value(), settings.lay, first->verdict, draws, settings.threads,
                                              {stretch.progress, half, stretch.to});
  if (!all) return stopped();
  return std::move(*all);
}

// What decides is not how the fiber lies: no setting of the traverse changes it.
bool has_no_cure(const WindVerdict& verdict) {
  constexpr Weighed of_the_order[] = {Weighed::planned_end, Weighed::greatest_pull, Weighed::least_pull,
                                      Weighed::bend,        Weighed::spool_speed,   Weighed::clutch_current};
  return std::any_of(verdict.checks.begin(), verdict.checks.end(), [&](const Check& check) {
    return check.grade != Grade::good &&
           std::find(std::begin(of_the_order), std::end(of_the_order), check.what) != std::end(of_the_order);
  });
}

ImproveSettings search_of(const BeginSettings& settings) {
  ImproveSettings search;
  search.lay = settings.lay;
  search.threads = settings.threads;
  search.trials = settings.trials;
  // The person's, or the fiber's own; of the order, not of the traverse.
  for (const char* path : {tension_path, start_path}) search.requests.push_back({path, {}, {}, {}, true});
  for (const std::string& path : settings.given) search.requests.push_back({path, {}, {}, {}, true});
  return search;
}

}  // namespace

Result<Beginning> begin_plan(PlanDraft draft, const BeginSettings& settings, Progress& progress) {
  Beginning beginning;
  beginning.draft = with_usual_settings(std::move(draft), settings);
  Result<WindVerdict> usual = judged(beginning.draft, settings, progress);
  if (!usual.ok()) return usual.issues();
  beginning.verdict = std::move(usual).value();
  if (beginning.verdict.grade == Grade::good) return beginning;
  if (has_no_cure(beginning.verdict)) return beginning;

  beginning.searched = true;
  progress.report(0.0);
  const Result<Plan> plan = check(beginning.draft);
  if (!plan.ok()) return plan.issues();
  std::optional<Result<Improvement>> improvement;
  run_parallel(1, 1, {progress, 0.0, searched_all}, [&](std::size_t, Progress& inner) {
    improvement = improve(plan.value(), search_of(settings), inner);
  });
  if (progress.cancelled() || !improvement) return stopped();
  if (!improvement->ok()) return improvement->issues();
  const std::vector<Proposal>& best = improvement->value().best;
  for (std::size_t i = 0; i < best.size(); ++i) {
    const double each = (1.0 - searched_all) / static_cast<double>(best.size());
    const double from = searched_all + each * static_cast<double>(i);
    PlanDraft proposed = neat(beginning.draft, best[i].draft);
    Result<WindVerdict> verdict = judged(proposed, settings, {progress, from, from + each});
    if (!verdict.ok()) return verdict.issues();
    if (verdict.value().grade >= beginning.verdict.grade) continue;
    beginning.draft = std::move(proposed);
    beginning.verdict = std::move(verdict).value();
    if (beginning.verdict.grade == Grade::good) break;
  }
  return beginning;
}

}  // namespace laywright
