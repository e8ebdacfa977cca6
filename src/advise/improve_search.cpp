#include "advise/improve_search.h"

#include <algorithm>
#include <limits>
#include <utility>

#include <nlopt.hpp>

#include "advise/late_settings.h"
#include "advise/lattice.h"

namespace laywright {
namespace {

// Half of the trials spread out, half refine the best of them.
constexpr double spread_share = 0.5;
constexpr std::size_t refined = 4;
// At how many of the best places the late settings are turned.
constexpr std::size_t turned_late_at = 2;

// A plan that is not sound, or cannot be laid.
constexpr double impossible = 1e12;

void sort_best_first(std::vector<Found>& all) {
  std::stable_sort(all.begin(), all.end(), [](const Found& a, const Found& b) { return a.cost < b.cost; });
}

void drop_repeats(std::vector<Found>& all) {
  std::vector<Found> kept;
  for (Found& each : all) {
    const bool known =
        std::any_of(kept.begin(), kept.end(), [&](const Found& k) { return k.values == each.values; });
    if (!known) kept.push_back(std::move(each));
  }
  all = std::move(kept);
}

}  // namespace

ImproveSearch::ImproveSearch(const PlanDraft& draft, const std::vector<SearchableSetting>& searchables,
                             std::vector<double> base, const ImproveSettings& settings)
    : draft_(draft),
      searchables_(searchables),
      base_(std::move(base)),
      early_(static_cast<std::size_t>(std::count_if(searchables.begin(), searchables.end(),
                                                    [](const SearchableSetting& each) { return !each.late; }))),
      settings_(settings),
      lay_(settings.lay) {
  lay_.fidelity *= search_fidelity;
}

std::vector<double> ImproveSearch::position(const std::vector<double>& unit) const {
  std::vector<double> values = base_;
  for (std::size_t i = 0; i < early_; ++i) {
    const SearchableSetting& searchable = searchables_[i];
    values[i] = searchable.nearest(searchable.low + unit[i] * (searchable.high - searchable.low));
  }
  return values;
}

std::vector<double> ImproveSearch::unit_of(const std::vector<double>& values) const {
  std::vector<double> unit;
  for (std::size_t i = 0; i < early_; ++i) {
    const SearchableSetting& searchable = searchables_[i];
    unit.push_back(std::clamp((values[i] - searchable.low) / (searchable.high - searchable.low), 0.0, 1.0));
  }
  return unit;
}

void ImproveSearch::lay_at(Found& place, Progress& progress) const {
  place.cost = impossible;
  const PlanDraft draft = set_searchables(draft_, searchables_, place.values);
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) return;
  const std::optional<Trial> trial = try_plan(draft, lay_, progress);
  if (!trial) return;
  const Merit merit = merit_of(plan.value(), *trial);
  place.cost = cost_of(merit, settings_.weights);
  place.good = merit.past_good <= 0.0;
}

// The settings, each as it is or where it usually is best: of a plan with a few settings wrong, one of these sets just those
// right.
std::vector<std::vector<double>> ImproveSearch::usual_positions() const {
  // As many as the search has trials to spare for.
  constexpr std::size_t most_searchables = 5;
  std::vector<std::size_t> moved;
  for (std::size_t i = 0; i < early_ && moved.size() < most_searchables; ++i) {
    if (usual_value(draft_, searchables_[i].path)) moved.push_back(i);
  }
  std::vector<std::vector<double>> all;
  for (unsigned choice = 0; choice < 1U << moved.size(); ++choice) {
    std::vector<double> values = base_;
    // The stops last: where they belong depends on the others.
    for (const bool stops : {false, true}) {
      for (std::size_t bit = 0; bit < moved.size(); ++bit) {
        const SearchableSetting& searchable = searchables_[moved[bit]];
        if ((choice >> bit & 1U) == 0U || is_stop(searchable) != stops) continue;
        const PlanDraft so_far = set_searchables(draft_, searchables_, values);
        values[moved[bit]] =
            searchable.nearest(std::clamp(*usual_value(so_far, searchable.path), searchable.low, searchable.high));
      }
    }
    all.push_back(std::move(values));
  }
  return all;
}

std::vector<Found> ImproveSearch::spread(const Stretch& stretch) {
  const auto count = static_cast<std::size_t>(std::max(4.0, spread_share * settings_.trials));
  std::vector<Found> all;
  for (std::vector<double>& values : usual_positions()) all.push_back({std::move(values)});
  const std::size_t more = early_ > 0 && count > all.size() ? count - all.size() : 0;
  if (more > 0) {
    for (const auto& point : lattice(more, early_, settings_.lay.seed)) all.push_back({position(point)});
  }
  drop_repeats(all);
  run_parallel(all.size(), settings_.threads, stretch,
               [&](std::size_t i, Progress& inner) { lay_at(all[i], inner); });
  trials_ += static_cast<int>(all.size());
  sort_best_first(all);
  return all;
}

std::vector<Found> ImproveSearch::refine(const Found& start, int trials, Progress& progress) const {
  std::vector<Found> seen;
  int calls = 0;
  const nlopt::vfunc objective = [](const std::vector<double>& unit, std::vector<double>&, void* data) {
    return (*static_cast<std::function<double(const std::vector<double>&)>*>(data))(unit);
  };
  std::function<double(const std::vector<double>&)> cost = [&](const std::vector<double>& unit) {
    if (progress.cancelled()) throw nlopt::forced_stop();
    const std::vector<double> values = position(unit);
    const auto known = std::find_if(seen.begin(), seen.end(), [&](const Found& f) { return f.values == values; });
    if (known != seen.end()) return known->cost;
    Progress one;  // of this build; the share of all is told below
    Found place{values};
    lay_at(place, one);
    const double found = place.cost;
    seen.push_back(std::move(place));
    progress.report(static_cast<double>(++calls) / trials);
    if (calls >= trials) throw nlopt::forced_stop();
    return found;
  };
  nlopt::opt search(nlopt::LN_SBPLX, static_cast<unsigned>(early_));
  search.set_lower_bounds(0.0);
  search.set_upper_bounds(1.0);
  search.set_min_objective(objective, &cost);
  constexpr double first_step = 0.1, last_step = 1e-3;
  search.set_initial_step(std::vector<double>(early_, first_step));
  search.set_xtol_abs(last_step);
  // Repeats cost nothing, but must end.
  search.set_maxeval(20 * trials);
  std::vector<double> unit = unit_of(start.values);
  double least = 0.0;
  try {
    search.optimize(unit, least);
  } catch (const nlopt::forced_stop&) {
    // What was seen is the result.
  } catch (const nlopt::roundoff_limited&) {
  }
  return seen;
}

void ImproveSearch::turn_late(std::vector<Found>& all, const Stretch& stretch) {
  const bool lay_turns = tension_turns_lay(draft_);
  std::vector<Found> more;
  for (std::size_t place = 0; place < std::min(turned_late_at, all.size()); ++place) {
    for (std::size_t i = early_; i < searchables_.size(); ++i) {
      if (searchables_[i].path == tension_path && !lay_turns) continue;
      for (const double position : late_positions(searchables_[i], all[place].values[i])) {
        more.push_back({all[place].values});
        more.back().values[i] = position;
      }
    }
  }
  drop_repeats(more);
  run_parallel(more.size(), settings_.threads, stretch,
               [&](std::size_t i, Progress& inner) { lay_at(more[i], inner); });
  trials_ += static_cast<int>(more.size());
  turned_late_ = !more.empty();
  all.insert(all.end(), more.begin(), more.end());
}

std::vector<Found> ImproveSearch::run(Progress& progress) {
  constexpr double spread_end = 0.25, refine_end = 0.48, late_end = 0.5;  // of the way; then comes the confirmation
  std::vector<Found> all = spread({progress, progress.share(), spread_end});
  if (progress.cancelled() || all.empty()) return all;
  const std::size_t starts = early_ > 0 ? std::min(refined, all.size()) : 0;
  const int trials = std::max(1, static_cast<int>((1.0 - spread_share) * settings_.trials /
                                                  static_cast<double>(std::max<std::size_t>(1, starts))));
  std::vector<std::vector<Found>> more(starts);
  run_parallel(starts, settings_.threads, {progress, spread_end, refine_end},
               [&](std::size_t i, Progress& inner) { more[i] = refine(all[i], trials, inner); });
  for (std::vector<Found>& each : more) {
    trials_ += static_cast<int>(each.size());
    all.insert(all.end(), each.begin(), each.end());
  }
  sort_best_first(all);
  drop_repeats(all);
  if (all.front().good || progress.cancelled()) return all;
  turn_late(all, {progress, progress.share(), late_end});
  sort_best_first(all);
  drop_repeats(all);
  return all;
}

}  // namespace laywright
