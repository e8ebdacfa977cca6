#include "advise/searchable_setting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "advise/late_settings.h"
#include "advise/settable_step.h"
#include "advise/setting_text.h"
#include "base/round_figure.h"
#include "plan/plan_values.h"
#include "verdict/usual_settings.h"

namespace laywright {
namespace {

constexpr const char* reversal_path = "traverse.reversal.turns";
constexpr const char* free_length_path = "traverse.free_length";
constexpr double crossed_d = 3.0;  // from here on a pitch is meant to leave room

// The key in the traverse, and its like in every step of the wind moved by the same.
void set_everywhere(PlanDraft& draft, const std::string& key, double value) {
  const std::string path = fmt::format("traverse.{}", key);
  const double by = value - value_at(draft, path).value_or(0.0);
  set_value(draft, path, value);
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    const std::string in_step = fmt::format("{}.{}", step_path(i), key);
    if (const std::optional<double> before = value_at(draft, in_step)) set_value(draft, in_step, *before + by);
  }
}

SearchableSetting searchable(const PlanDraft& draft, const std::string& path, const std::string& words, double low,
                             double high, double step) {
  SearchableSetting made{
      path, words, low, high, settable_step(draft, path, step), value_at(draft, path).value_or(0.0), {}};
  constexpr std::string_view traverse = "traverse.";
  const bool in_steps = path == "traverse.pitch" || path == "traverse.left_stop" || path == "traverse.right_stop";
  if (in_steps) {
    made.set = [key = path.substr(traverse.size())](PlanDraft& to, double value) { set_everywhere(to, key, value); };
  } else {
    made.set = [path](PlanDraft& to, double value) { set_value(to, path, value); };
  }
  return made;
}

SearchableSetting pitch_searchable(const PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm, pitch = draft.traverse.pitch_mm;
  constexpr double snug = 1.01, loose = 1.25;  // below d there is no room for a turn
  const bool crossed = pitch >= crossed_d * d;
  return searchable(draft, "traverse.pitch", "pitch", crossed ? 0.9 * pitch : snug * d,
                    crossed ? 1.1 * pitch : loose * d, round_figure_below(crossed ? 0.001 * pitch : d / 200.0));
}

SearchableSetting stop_searchable(const PlanDraft& draft, const char* side) {
  const double d = draft.fiber.diameter_mm, pitch = draft.traverse.pitch_mm;
  const double ideal = ideal_stop_mm(draft, pitch);
  const double reach = std::max(3.0 * d, 0.25 * pitch) + draft.traverse.reversal.lost_motion_mm;
  return searchable(draft, fmt::format("traverse.{}_stop", side), fmt::format("{} stop", side), ideal - reach,
                    ideal + reach, round_figure_below(std::max(d / 20.0, 0.005 * pitch)));
}

// Of an instant reversal it turns a dwell on.
SearchableSetting reversal_searchable(const PlanDraft& draft) {
  constexpr double most_turns = 2.0, quarter_turn = 0.25;
  const Reversal& reversal = draft.traverse.reversal;
  const bool instant = reversal.kind == ReversalKind::instant;
  SearchableSetting made = searchable(
      draft, reversal_path, reversal.kind == ReversalKind::ramp ? "ramp at the stops" : "dwell at the stops", 0.0,
      std::max(most_turns, reversal.turns), quarter_turn);
  if (instant) made.now = 0.0;
  made.set = [](PlanDraft& to, double turns) {
    Reversal& set = to.traverse.reversal;
    if (turns > 0.0 && set.kind == ReversalKind::instant) set.kind = ReversalKind::dwell;
    if (set.kind != ReversalKind::instant) set.turns = turns;
  };
  return made;
}

SearchableSetting free_length_searchable(const PlanDraft& draft) {
  constexpr double quarter = 0.25, twentieth = 0.05;
  const double least = quarter * long_free_length_d * draft.fiber.diameter_mm;
  return searchable(draft, free_length_path, "free length", least, draft.traverse.free_length_mm,
                    round_figure_below(twentieth * least));
}

// Stops that move outward by so much with every layer, as steps of the wind: as few as the dial can follow.
void set_drift(PlanDraft& draft, double drift_mm, double dial_mm, int layers) {
  constexpr int most_steps = 24;
  draft.wind.steps.clear();
  if (drift_mm == 0.0) return;
  const int every = std::max(
      {1, static_cast<int>(std::lround(dial_mm / std::abs(drift_mm))), (layers + most_steps - 1) / most_steps});
  const auto to_dial = [&](double value) { return std::round(value / dial_mm) * dial_mm; };
  for (int layer = 1 + every; layer <= layers; layer += every) {
    const double out = drift_mm * (layer - 1);
    WindStep step;
    step.from_layer = layer;
    step.left_stop_mm = to_dial(draft.traverse.left_stop_mm - out);
    step.right_stop_mm = to_dial(draft.traverse.right_stop_mm - out);
    draft.wind.steps.push_back(step);
  }
}

SearchableSetting drift_searchable(const PlanDraft& draft, double dial_mm) {
  const double d = draft.fiber.diameter_mm;
  constexpr double layer_rise_d = 0.85;
  const double opening = layer_rise_d * d * std::tan(draft.spool.flange_taper_rad);
  const double range = std::max(2.0 * opening, 0.1 * d);
  const double depth = 0.5 * (draft.spool.flange_diameter_mm - draft.spool.barrel_diameter_mm);
  const int layers = static_cast<int>(std::ceil(depth / (layer_rise_d * d)));
  SearchableSetting made{drift_path, "stops outward per layer",        opening > 0.0 ? 0.0 : -range,
                         range,      round_figure_below(range / 20.0), 0.0,
                         {}};
  made.set = [dial_mm, layers](PlanDraft& to, double value) { set_drift(to, value, dial_mm, layers); };
  return made;
}

bool is_number(const FieldInfo& field) {
  return field.kind == FieldKind::quantity || field.kind == FieldKind::number || field.kind == FieldKind::friction;
}

}  // namespace

double SearchableSetting::nearest(double value) const {
  const double stepped = now + std::round((std::clamp(value, low, high) - now) / step) * step;
  // Rounding must not leave the range.
  if (stepped > high) return stepped - step >= low ? stepped - step : high;
  if (stepped < low) return stepped + step <= high ? stepped + step : low;
  return stepped;
}

double ideal_stop_mm(const PlanDraft& draft, double pitch_mm) {
  const double slope = pitch_mm / (std::numbers::pi * draft.spool.barrel_diameter_mm);
  return 0.5 * draft.fiber.diameter_mm - draft.traverse.free_length_mm * slope * std::numbers::ln2;
}

bool is_stop(const SearchableSetting& searchable) {
  return searchable.path == "traverse.left_stop" || searchable.path == "traverse.right_stop";
}

std::optional<double> usual_value(const PlanDraft& draft, std::string_view path) {
  constexpr double short_of_long = 0.5;
  const Traverse& traverse = draft.traverse;
  if (path == "traverse.left_stop" || path == "traverse.right_stop") return ideal_stop_mm(draft, traverse.pitch_mm);
  if (path == "traverse.pitch" && traverse.pitch_mm < crossed_d * draft.fiber.diameter_mm)
    return usual_pitch_mm(draft);
  if (path == reversal_path) {
    const bool ramps = traverse.reversal.kind == ReversalKind::ramp;
    return ramps && traverse.reversal.turns <= short_ramp_turns ? std::nullopt : std::optional(0.0);
  }
  const double long_mm = long_free_length_d * draft.fiber.diameter_mm;
  if (path == free_length_path && traverse.free_length_mm > long_mm) return short_of_long * long_mm;
  return std::nullopt;
}

Result<std::vector<SearchableSetting>> searchables_of(const PlanDraft& draft,
                                                      const std::vector<SearchRequest>& requests, bool drift) {
  std::vector<SearchableSetting> searchables{pitch_searchable(draft), stop_searchable(draft, "left"),
                                             stop_searchable(draft, "right")};
  const bool steps = draft.traverse.motion == Motion::stepped;
  if (!steps || draft.traverse.reversal.kind != ReversalKind::instant)
    searchables.push_back(reversal_searchable(draft));
  if (draft.traverse.free_length_mm > long_free_length_d * draft.fiber.diameter_mm)
    searchables.push_back(free_length_searchable(draft));
  if ((drift || draft.spool.flange_taper_rad > 0.0) && draft.wind.steps.empty()) {
    searchables.push_back(drift_searchable(draft, searchables[1].step));
  }
  add_late_settings(draft, searchables);
  for (const SearchRequest& request : requests) {
    auto found = std::find_if(searchables.begin(), searchables.end(),
                              [&](const SearchableSetting& each) { return each.path == request.path; });
    if (request.keep) {
      if (found != searchables.end()) searchables.erase(found);
      continue;
    }
    if (found == searchables.end()) {
      const FieldInfo* field = field_at(draft, request.path);
      if (field == nullptr || !is_number(*field) || !request.low || !request.high) {
        return option_issue(request.path, "", "cannot be searched; give a number of the plan a range, low:high");
      }
      searchables.push_back(searchable(draft, request.path, request.path, *request.low, *request.high,
                                       round_figure_below((*request.high - *request.low) / 50.0)));
      found = searchables.end() - 1;
    }
    if (request.low) found->low = *request.low;
    if (request.high) found->high = *request.high;
    if (request.low && !found->is_switch) found->late = false;
    if (request.step) found->step = *request.step;
    if (found->low >= found->high && !found->late)
      return option_issue(request.path, "", "the range is empty; give the lower end first");
    if (found->step <= 0.0) return option_issue(request.path, "", "the step must be above nothing");
  }
  for (SearchableSetting& each : searchables) {
    const bool asked = std::any_of(requests.begin(), requests.end(), [&](const SearchRequest& request) {
      return request.path == each.path && request.low;
    });
    if (asked) continue;
    each.low = std::min(each.low, each.now);
    each.high = std::max(each.high, each.now);
  }
  std::stable_partition(searchables.begin(), searchables.end(),
                        [](const SearchableSetting& each) { return !each.late; });
  return searchables;
}

PlanDraft set_searchables(PlanDraft draft, const std::vector<SearchableSetting>& searchables,
                          const std::vector<double>& values) {
  for (std::size_t i = 0; i < searchables.size(); ++i) searchables[i].set(draft, values[i]);
  return draft;
}

}  // namespace laywright
