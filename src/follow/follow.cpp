#include "follow/follow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "advise/setting_text.h"
#include "plan/dialling.h"

namespace laywright {
namespace {

// Shares of the way of the progress.
constexpr double beside_done = 0.1, likely_done = 0.6;

// What was found, and where the last reading is with it.
struct Found {
  PlanDraft draft;
  FitModel::Place at;
};

std::optional<Found> found_of(const Plan& plan, const AsWound& wound, const std::vector<Fitted>& fitted,
                              const LaySettings& lay, Progress& progress) {
  std::vector<Unknown> unknowns;
  std::vector<double> values;
  for (const Fitted& each : fitted) {
    unknowns.push_back(each.unknown);
    values.push_back(std::round(each.value / step_told(each)) * step_told(each));
  }
  const FitModel model(plan, wound, unknowns, lay);
  const std::optional<FitModel::Place> at = model.last_place(values, progress);
  if (!at) return std::nullopt;
  return Found{fitted.empty() ? plan.draft() : model.draft_at(values), *at};
}

// What is worth trying: the fit's corrections and, where the guide stands too long and nothing takes that back, both stops
// further in or out with them: a guide that stands lets the fiber come nearer to the stop.
std::vector<NowChange> changes_to_try(const Plan& plan, const Fit& fit, int layer) {
  constexpr std::array<double, 6> shifts_d{-1.0, -0.5, -0.25, 0.25, 0.5, 1.0};
  std::vector<NowChange> changes{change_of(plan, fit, layer)};
  if (stands_too_long(fit)) {
    for (const double shift : shifts_d)
      changes.push_back(change_of(plan, fit, layer, shift * plan.fiber().diameter_mm));
  }
  std::erase_if(changes, [](const NowChange& each) { return each.settings.empty(); });
  return changes;
}

Issue not_laid(Progress& progress) {
  return option_issue("", "",
                      progress.cancelled() ? stopped_text : "could not be laid to its end with what was found");
}

// The best of the changes, where it is better than none.
void choose(std::vector<NowChange> changes, std::vector<std::optional<Forecast>> laid, Followed& followed) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < laid.size(); ++i) {
    if (laid[i] && laid[i]->verdict.grade <= laid[best]->verdict.grade && laid[i]->cost < laid[best]->cost) best = i;
  }
  if (best > 0) {
    followed.change = std::move(changes[best - 1]);
    followed.changed = std::move(laid[best]);
  }
  followed.unchanged = std::move(laid.front());
}

}  // namespace

Result<Followed> follow(const Plan& plan, const AsWound& wound, const FollowSettings& settings, Progress& progress) {
  Followed followed;
  Result<Beside> beside = beside_plan(plan, wound, settings.errors, settings.lay, settings.plan_draws,
                                      settings.threads, {progress, 0.0, beside_done});
  if (!beside.ok()) return beside.issues();
  followed.beside = std::move(beside).value();
  followed.on_plan = followed.beside.on_plan();
  if (!followed.on_plan) {
    Result<Likely> likely = likely_off(plan, wound, settings.lay, settings.errors, settings.threads,
                                       {progress, beside_done, likely_done});
    if (!likely.ok()) return likely.issues();
    followed.likely = std::move(likely).value();
  }
  const Fit* fit = followed.likely ? &followed.likely->fit : nullptr;
  Progress apart;  // a part of a wind: too short to be told
  const std::optional<Found> found =
      found_of(plan, wound, fit != nullptr ? fit->fitted : std::vector<Fitted>{}, settings.lay, apart);
  if (!found) return not_laid(progress);
  followed.at = found->at;
  const Result<Plan> laid_plan = check(found->draft);
  if (!laid_plan.ok()) return not_laid(progress);
  std::vector<NowChange> changes;
  if (fit != nullptr) changes = changes_to_try(plan, *fit, followed.at.layer);
  std::vector<MidwindChange> of_wind(1);
  for (NowChange& each : changes) {
    each.of_wind.from_turn = followed.at.turn;
    of_wind.push_back(each.of_wind);
  }
  std::vector<std::optional<Forecast>> laid =
      forecast(laid_plan.value(), of_wind, settings.lay, settings.draws, settings.threads,
               {progress, fit != nullptr ? likely_done : beside_done, 1.0});
  if (progress.cancelled() || !laid.front()) return not_laid(progress);
  choose(std::move(changes), std::move(laid), followed);
  return followed;
}

}  // namespace laywright
