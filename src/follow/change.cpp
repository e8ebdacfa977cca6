#include "follow/change.h"

#include <algorithm>
#include <cmath>

#include "plan/dialling.h"
#include "plan/layer_setting.h"
#include "plan/plan_values.h"

namespace laywright {
namespace {

constexpr const char* left_stop = "traverse.left_stop";
constexpr const char* right_stop = "traverse.right_stop";
constexpr const char* pitch = "traverse.pitch";

bool is_standing(const Unknown& unknown) {
  return unknown.path == "traverse.reversal.turns" || unknown.path == "traverse.reversal.lost_motion";
}

const Fitted* fitted_at(const Fit& fit, std::string_view path) {
  const auto found = std::find_if(fit.fitted.begin(), fit.fitted.end(),
                                  [&](const Fitted& each) { return each.unknown.path == path; });
  return found == fit.fitted.end() ? nullptr : &*found;
}

// By how much a setting is to move; none where the fit leaves it.
struct Move {
  std::string path;
  double by = 0.0;
};

std::vector<Move> moves_of(const Fit& fit, double shift_mm) {
  std::vector<Move> moves;
  for (const Correction& each : fit.corrections)
    moves.push_back({each.path, each.set_to - fitted_at(fit, each.path)->unknown.believed});
  if (shift_mm == 0.0) return moves;
  for (const char* const path : {left_stop, right_stop}) {
    const auto found = std::find_if(moves.begin(), moves.end(), [&](const Move& each) { return each.path == path; });
    if (found != moves.end()) {
      found->by += shift_mm;
    } else {
      moves.push_back({path, shift_mm});
    }
  }
  return moves;
}

// The plan with the traverse as it is set in this layer: a dial is the same one in each.
PlanDraft as_set_in(const Plan& plan, int layer) {
  PlanDraft draft = plan.draft();
  draft.traverse = traverse_in_layer(plan, layer);
  draft.wind.steps.clear();
  return draft;
}

std::string reading_in(const Dialling& dialling, std::string_view path) {
  const auto found = std::find_if(dialling.settings.begin(), dialling.settings.end(),
                                  [&](const DialledSetting& each) { return each.path == path; });
  return found == dialling.settings.end() ? "" : reading_words(*found);
}

void add_to(MidwindChange& change, const NowSet& set) {
  const double more = set.to - set.from;
  if (set.path == pitch) change.pitch_factor = set.to / set.from;
  if (set.path == left_stop) change.left_stop_mm = more;
  if (set.path == right_stop) change.right_stop_mm = more;
  if (set.path == "traverse.reversal.turns") change.reversal_turns = more;
}

}  // namespace

NowChange change_of(const Plan& plan, const Fit& fit, int layer, double shift_mm) {
  const PlanDraft now = as_set_in(plan, layer);
  PlanDraft then = now;
  const std::vector<Move> moves = moves_of(fit, shift_mm);
  for (const Move& each : moves) {
    const double from = *value_at(now, each.path);
    // A pitch by its share: a step of the wind may have set another one.
    const double to = each.path == pitch ? from * (1.0 + each.by / plan.traverse().pitch_mm) : from + each.by;
    set_value(then, each.path, tidy(to));
  }
  const Dialling before = dial(now), after = dial(then);
  NowChange change;
  for (const Move& each : moves) {
    const Fitted* fitted = fitted_at(fit, each.path);
    NowSet set{each.path,
               fitted != nullptr        ? fitted->unknown.words
               : each.path == left_stop ? "left stop"
                                        : "right stop",
               *value_at(now, each.path),
               *value_at(after.draft, each.path),
               reading_in(before, each.path),
               reading_in(after, each.path)};
    if (set.to == set.from) continue;
    add_to(change.of_wind, set);
    change.settings.push_back(std::move(set));
  }
  return change;
}

bool stands_too_long(const Fit& fit) {
  return std::any_of(fit.fitted.begin(), fit.fitted.end(), [&](const Fitted& each) {
    const bool corrected = std::any_of(fit.corrections.begin(), fit.corrections.end(),
                                       [&](const Correction& c) { return c.path == each.unknown.path; });
    return is_standing(each.unknown) && each.told_by_readings && each.low > each.unknown.believed && !corrected;
  });
}

}  // namespace laywright
