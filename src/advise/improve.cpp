#include "advise/improve.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "advise/improve_search.h"
#include "advise/improve_words.h"
#include "advise/late_settings.h"
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
  quick.gives_way = false;
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

// As far as the pull stays good, now that it is known; left out where it never is, or a fiber that does not roll has a good one.
// `values` of all searchables follow.
void bound_tension(const PlanDraft& draft, std::vector<SearchableSetting>& searchables, Proposal& plan,
                   std::vector<double>& values) {
  SearchableSetting* tension = late_tension(searchables);
  if (tension == nullptr) return;
  const std::optional<TensionRoom> room = tension_room(draft, plan.pull);
  if (room && room->low_N < room->high_N) {
    tension->low = room->low_N;
    tension->high = room->high_N;
    values.back() = tension->nearest(tension->now);
    return;
  }
  searchables.pop_back();
  values.pop_back();
  plan.values.pop_back();
}

// The settings that were never turned are not told.
void forget_late(Improvement& improvement) {
  const auto first = std::find_if(improvement.searchables.begin(), improvement.searchables.end(),
                                  [](const SearchableSetting& each) { return each.late; });
  const auto kept = static_cast<std::size_t>(first - improvement.searchables.begin());
  improvement.searchables.erase(first, improvement.searchables.end());
  improvement.plan.values.resize(kept);
  for (Proposal& each : improvement.best) each.values.resize(kept);
}

bool is_laid_well(const Proposal& proposal) { return proposal.well_laid_draws == proposal.draws; }

// Of what was judged, the best that are better than the plan, with their steps and all verdicts. False when cancelled.
bool finish(const Plan& plan, const ImproveSettings& settings, Improvement& improvement, Progress& progress) {
  std::vector<Proposal>& best = improvement.best;
  std::erase_if(best, [&](const Proposal& each) { return !better_on_all_draws(each, improvement.plan); });
  sort_by_cost(best);
  if (best.size() > static_cast<std::size_t>(settings.best)) best.resize(static_cast<std::size_t>(settings.best));
  if (!add_steps(plan, improvement.searchables, best, settings, {progress, progress.share(), stepped_all},
                 improvement.trials))
    return false;
  sort_by_cost(best);
  std::vector<Proposal*> told{&improvement.plan};
  for (Proposal& each : best) told.push_back(&each);
  return add_verdicts(told, settings, {progress, progress.share(), 1.0});
}

}  // namespace

Result<Improvement> improve(const Plan& plan, const ImproveSettings& settings, Progress& progress) {
  Result<std::vector<SearchableSetting>> searchables =
      searchables_of(plan.draft(), settings.requests, settings.drift);
  if (!searchables.ok()) return searchables.issues();
  Improvement improvement;
  improvement.searchables = std::move(searchables).value();
  if (improvement.searchables.empty())
    return option_issue("", "", "there is nothing left to turn; keep fewer settings");
  std::vector<double> base;  // the plan's own places, but for a tension that must be another
  for (const SearchableSetting& searchable : improvement.searchables) base.push_back(searchable.now);

  progress.report(0.0);
  std::vector<Proposal> as_it_is =
      judge(plan, improvement.searchables, {base}, settings, {progress, 0.0, looked}, improvement.trials);
  if (as_it_is.empty()) return stopped();
  improvement.plan = std::move(as_it_is.front());
  bound_tension(plan.draft(), improvement.searchables, improvement.plan, base);
  const bool turns_pull = base != improvement.plan.values;
  improvement.leave_it = is_laid_well(improvement.plan) && !turns_pull && !settings.weights;

  bool turned_late = turns_pull;
  // Where the pull alone is wrong, its tension is what is proposed.
  if (turns_pull && is_laid_well(improvement.plan) && !settings.weights) {
    improvement.best =
        judge(plan, improvement.searchables, {base}, settings, {progress, looked, judged_all}, improvement.trials);
    std::erase_if(improvement.best, [](const Proposal& each) { return each.good_draws < each.draws; });
  }
  if (!improvement.leave_it && improvement.best.empty() && !progress.cancelled()) {
    const std::optional<double> turns = turns_of_first_layers(plan, settings.lay, {progress, looked, looked});
    if (!turns) return stopped();
    ImproveSearch search(shortened(plan.draft(), *turns), improvement.searchables, base, settings);
    std::vector<Found> found = search.run(progress);
    improvement.trials += search.trials();
    improvement.layers_tried = search_layers;
    turned_late |= search.turned_late();
    if (progress.cancelled()) return stopped();

    std::erase_if(found, [&](const Found& each) { return each.values == improvement.plan.values; });
    auto positions = apart(found, improvement.searchables, static_cast<std::size_t>(settings.best) + more_than_told);
    improvement.best = judge(plan, improvement.searchables, positions, settings,
                             {progress, progress.share(), judged_all}, improvement.trials);
  }
  if (!finish(plan, settings, improvement, progress)) return stopped();
  if (!turned_late) forget_late(improvement);
  for (Proposal& each : improvement.best) each.text = words_of(plan, improvement, each);
  improvement.text = conclusion_of(improvement);
  return improvement;
}

}  // namespace laywright
