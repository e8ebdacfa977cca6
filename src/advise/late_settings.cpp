#include "advise/late_settings.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/round_figure.h"
#include "lay/torsion.h"
#include "plan/plan_values.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

constexpr double furthest = 4.0;
// Good, and not marginal by the last digit.
constexpr double within = (1.0 - firm_share) * (1.0 - 1e-6);

}  // namespace

std::optional<TensionRoom> tension_room(const PlanDraft& draft, const std::vector<Check>& pull) {
  if (!draft.wind.tension_N || *draft.wind.tension_N <= 0.0) return std::nullopt;
  const double now = *draft.wind.tension_N;
  double low = 0.0, high = std::numeric_limits<double>::infinity();
  bool fiber_known = false;
  for (const Check& check : pull) {
    if (check.value <= 0.0) continue;
    const double at_limit = now * check.limit / check.value;
    if (check.at_least) low = std::max(low, at_limit / within);
    if (!check.at_least) high = std::min(high, at_limit * within);
    fiber_known |= check.what == Weighed::greatest_pull;
  }
  if (!fiber_known) high = std::min(high, std::max(now, low));
  if (low > high) return std::nullopt;
  const double good = std::clamp(now, low, high);
  return TensionRoom{std::max(low, good / furthest), std::min(high, good * furthest)};
}

bool tension_turns_lay(const PlanDraft& draft) {
  const Result<Plan> plan = check(draft);
  return plan.ok() && draft.wind.tension_N && torsion_of(plan.value()).rolls;
}

bool start_turns_lay(const PlanDraft& draft) {
  const auto stops_differ = [](const WindStep& step) { return step.left_stop_mm != step.right_stop_mm; };
  return draft.traverse.left_stop_mm != draft.traverse.right_stop_mm || draft.spool.barrel_taper_mm != 0.0 ||
         std::any_of(draft.wind.steps.begin(), draft.wind.steps.end(), stops_differ);
}

void add_late_settings(const PlanDraft& draft, std::vector<SearchableSetting>& searchables) {
  const auto add = [&](const char* path, const char* words) -> SearchableSetting& {
    SearchableSetting made{path, words, 0.0, 0.0, 0.0, value_at(draft, path).value_or(0.0), {}};
    made.set = [path](PlanDraft& to, double value) { set_value(to, path, value); };
    made.late = true;
    return searchables.emplace_back(std::move(made));
  };
  if (start_turns_lay(draft)) {
    SearchableSetting& start = add(start_path, "side of the start");
    start.is_switch = true;
    start.high = start.step = 1.0;
  }
  if (draft.wind.tension_N && *draft.wind.tension_N > 0.0) {
    constexpr double twentieth = 0.05;
    SearchableSetting& tension = add(tension_path, "tension");
    tension.low = tension.high = tension.now;
    tension.step = round_figure_below(twentieth * tension.now);
  }
}

SearchableSetting* late_tension(std::vector<SearchableSetting>& searchables) {
  const auto found = std::find_if(searchables.begin(), searchables.end(), [](const SearchableSetting& each) {
    return each.late && each.path == tension_path;
  });
  return found == searchables.end() ? nullptr : &*found;
}

std::vector<double> late_positions(const SearchableSetting& searchable, double now) {
  std::vector<double> positions;
  const auto add = [&](double value) {
    value = searchable.nearest(value);
    if (value != now && std::find(positions.begin(), positions.end(), value) == positions.end())
      positions.push_back(value);
  };
  if (searchable.is_switch) {
    add(now == searchable.low ? searchable.high : searchable.low);
  } else {
    for (const double end : {searchable.low, searchable.high}) {
      add(std::sqrt(now * end));
      add(end);
    }
  }
  return positions;
}

}  // namespace laywright
