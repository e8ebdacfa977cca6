#include "advise/improve.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "advise/improve_search.h"
#include "advise/improve_words.h"
#include "advise/proposals.h"
#include "advise/setting_text.h"

namespace laywright {
namespace {

constexpr int search_layers = 12;
// Positions that are laid in full: more than are told, since not all bear it out.
constexpr std::size_t more_than_told = 5;
// Of the way: a first look at the plan as it is, all positions on their draws, and the best with steps.
constexpr double looked = 0.05, judged_all = 0.8, stepped_all = 0.97;

// The plan as it is, for the number of turns of its first layers; none when cancelled.
std::optional<double> turns_of_first_layers(const Plan& plan, const LaySettings& settings, const Stretch& stretch) {
  constexpr double quick_look = 0.25;
  LaySettings quick = settings;
  quick.fidelity *= quick_look;
  std::optional<double> turns;
  run_parallel(1, 1, stretch, [&](std::size_t, Progress& inner) {
    const Result<Build> build = lay(plan, quick, inner);
    if (!build.ok()) return;
    const auto& strokes = build.value().strokes;
    turns = strokes.size() <= search_layers
                ? build.value().turns
                : static_cast<double>(strokes[search_layers].first_node) / build.value().stations_per_turn;
  });
  return turns;
}

// Best first; of those that are all but the same the best alone.
std::vector<std::vector<double>> apart(const std::vector<Found>& found,
                                       const std::vector<SearchableSetting>& searchables, std::size_t most) {
  constexpr double near_steps = 1.5;
  std::vector<std::vector<double>> kept;
  for (const Found& each : found) {
    if (kept.size() == most) break;
    const bool repeats = std::any_of(kept.begin(), kept.end(), [&](const std::vector<double>& other) {
      for (std::size_t i = 0; i < searchables.size(); ++i) {
        if (std::abs(other[i] - each.values[i]) > near_steps * searchables[i].step) return false;
      }
      return true;
    });
    if (!repeats) kept.push_back(each.values);
  }
  return kept;
}

void sort_by_cost(std::vector<Proposal>& all) {
  std::stable_sort(all.begin(), all.end(), [](const Proposal& a, const Proposal& b) { return a.cost < b.cost; });
}

Issue stopped() { return option_issue("", "", stopped_text); }

}  // namespace

Result<Improvement> improve(const Plan& plan, const ImproveSettings& settings, Progress& progress) {
  Result<std::vector<SearchableSetting>> searchables =
      searchables_of(plan.draft(), settings.requests, settings.drift);
  if (!searchables.ok()) return searchables.issues();
  Improvement improvement;
  improvement.searchables = std::move(searchables).value();
  if (improvement.searchables.empty())
    return option_issue("", "", "there is nothing left to turn; keep fewer settings");
  std::vector<double> now;
  for (const SearchableSetting& searchable : improvement.searchables) now.push_back(searchable.now);

  progress.report(0.0);
  std::vector<Proposal> as_it_is =
      judge(plan, improvement.searchables, {now}, settings, {progress, 0.0, looked}, improvement.trials);
  if (as_it_is.empty()) return stopped();
  improvement.leave_it = as_it_is.front().good_draws == as_it_is.front().draws && !settings.weights;
  improvement.plan = std::move(as_it_is.front());

  if (!improvement.leave_it) {
    const std::optional<double> turns = turns_of_first_layers(plan, settings.lay, {progress, looked, looked});
    if (!turns) return stopped();
    ImproveSearch search(shortened(plan.draft(), *turns), improvement.searchables, settings);
    std::vector<Found> found = search.run(progress);
    improvement.trials += search.trials();
    improvement.layers_tried = search_layers;
    if (progress.cancelled()) return stopped();

    std::erase_if(found, [&](const Found& each) { return each.values == now; });
    auto positions = apart(found, improvement.searchables, static_cast<std::size_t>(settings.best) + more_than_told);
    improvement.best = judge(plan, improvement.searchables, positions, settings,
                             {progress, progress.share(), judged_all}, improvement.trials);
    std::erase_if(improvement.best,
                  [&](const Proposal& each) { return !better_on_all_draws(each, improvement.plan); });
    sort_by_cost(improvement.best);
    if (improvement.best.size() > static_cast<std::size_t>(settings.best)) {
      improvement.best.resize(static_cast<std::size_t>(settings.best));
    }
    if (!add_steps(plan, improvement.searchables, improvement.best, settings,
                   {progress, progress.share(), stepped_all}, improvement.trials))
      return stopped();
    sort_by_cost(improvement.best);
  }

  std::vector<Proposal*> told{&improvement.plan};
  for (Proposal& each : improvement.best) told.push_back(&each);
  if (!add_verdicts(told, settings, {progress, progress.share(), 1.0})) return stopped();
  for (Proposal& each : improvement.best) each.text = words_of(plan, improvement, each);
  improvement.text = conclusion_of(improvement);
  return improvement;
}

}  // namespace laywright
