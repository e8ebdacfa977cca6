#include "desk/plan_edits.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "base/round_figure.h"
#include "plan/size_estimate.h"

namespace laywright {
namespace {

constexpr int layers_between_steps = 10;

// A measure that was reached, as a person would write it down.
double rounded_to(double value, double step) { return std::max(step, std::round(value / step) * step); }

// The key of the step after the removed one becomes that of the removed one, and so on. Empty: it is dropped.
std::string moved_down(const std::string& path, std::size_t removed, std::size_t count) {
  for (std::size_t i = removed; i < count; ++i) {
    const std::string step = step_path(i);
    if (path != step && path.rfind(step + ".", 0) != 0) continue;
    return i == removed ? "" : step_path(i - 1) + path.substr(step.size());
  }
  return path;
}

bool is_unknown(const PlanState& state, const Issue& issue) {
  if (state.unread.count(issue.key) > 0) return false;
  const auto within = [&](const std::string& path) { return path.rfind(issue.key + ".", 0) == 0; };
  // A table that is missing has fields that are.
  return std::none_of(state.unread.begin(), state.unread.end(), within);
}

bool gives_takeup(const NamedEntry& entry) {
  return std::any_of(entry.values.begin(), entry.values.end(),
                     [](const auto& value) { return value.first.rfind("takeup.", 0) == 0; });
}

std::optional<double> reached(const Wound& wound, WindEnd end) {
  switch (end) {
    case WindEnd::length: return rounded_to(wound.build().length_mm, 100.0);
    case WindEnd::turns: return rounded_to(wound.build().turns, 1.0);
    case WindEnd::diameter: return rounded_to(wound.measurements().outer_diameter.middle_mm, 0.1);
  }
  return std::nullopt;
}

double estimated(const PlanDraft& draft, WindEnd end) {
  const double turns = turns_estimate(draft);
  const double barrel = draft.spool.barrel_diameter_mm;
  if (end == WindEnd::turns) return rounded_to(turns, 1.0);
  if (end == WindEnd::length) return rounded_to(turns * std::numbers::pi * barrel, 100.0);
  constexpr double fill = 0.8;
  const double d = draft.fiber.diameter_mm;
  const double layers = turns * d / std::max(d, draft.spool.inside_width_mm) * std::numbers::pi / 4.0 / fill;
  return rounded_to(barrel + 2.0 * d * layers, 0.1);
}

std::vector<std::string> paths_of(const PlanDraft& draft) {
  std::vector<std::string> paths;
  for (const auto& field : plan_fields()) paths.push_back(field.path());
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    for (const auto& field : step_fields()) paths.push_back(fmt::format("{}.{}", step_path(i), field.key));
  }
  return paths;
}

double neat_value(const FieldInfo& field, std::string_view written, double value) {
  constexpr std::size_t digits = 9;
  if (field.kind == FieldKind::choice || field.kind == FieldKind::whole || !std::isfinite(value)) return value;
  if (field.kind != FieldKind::quantity) return without_noise(value);
  const std::string text = format_quantity(value, *unit_written(field, written), digits);
  const ParsedQuantity read = parse_quantity(text, field.dimension);
  return read.quantity ? read.quantity->value : value;
}

}  // namespace

PlanState with_title(PlanState state, std::string title) {
  state.draft.title = valid_utf8(title);
  return state;
}

PlanState with_notes(PlanState state, std::string notes) {
  state.draft.notes = valid_utf8(notes);
  return state;
}

PlanState with_order_text(PlanState state, const OrderField& field, std::string text) {
  state.draft.order.*field.text = valid_utf8(text);
  return state;
}

PlanState with_step_added(PlanState state) {
  std::vector<WindStep>& steps = state.draft.wind.steps;
  WindStep step;
  step.from_layer = (steps.empty() ? 0 : steps.back().from_layer) + layers_between_steps;
  step.pitch_mm = state.draft.traverse.pitch_mm;
  for (const WindStep& before : steps) step.pitch_mm = before.pitch_mm ? before.pitch_mm : step.pitch_mm;
  steps.push_back(step);
  return state;
}

PlanState with_step_removed(PlanState state, std::size_t index) {
  std::vector<WindStep>& steps = state.draft.wind.steps;
  const std::size_t count = steps.size();
  steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(index));
  std::map<std::string, PlanDraft::Origin> origins;
  for (auto& [path, origin] : state.draft.origins) {
    if (std::string moved = moved_down(path, index, count); !moved.empty()) origins[std::move(moved)] = origin;
  }
  state.draft.origins = std::move(origins);
  std::set<std::string> unread;
  for (const std::string& path : state.unread) {
    if (std::string moved = moved_down(path, index, count); !moved.empty()) unread.insert(std::move(moved));
  }
  state.unread = std::move(unread);
  Issues reading;
  for (Issue& issue : state.reading) {
    issue.key = issue.key.empty() ? "" : moved_down(issue.key, index, count);
    if (!issue.key.empty()) reading.push_back(std::move(issue));
  }
  state.reading = std::move(reading);
  return state;
}

PlanState with_takeup(PlanState state, bool has_one) {
  if (state.draft.takeup.has_value() == has_one) return state;
  if (has_one) {
    state.draft.takeup.emplace();
    return state;
  }
  // A machine's entry that gives one is left; what else it gave stays.
  if (const NamedEntry* machine = entry_of(state.draft, EntryKind::machine);
      machine != nullptr && gives_takeup(*machine)) {
    std::erase_if(state.draft.entries, [](const NamedEntry& entry) { return entry.kind == EntryKind::machine; });
  }
  for (const auto& field : plan_fields()) {
    if (field.table == "takeup") state = with_value(std::move(state), field.path(), std::nullopt);
  }
  state.draft.takeup.reset();
  state.draft.origins.erase("takeup");
  return state;
}

const char* name_of(WindEnd end) {
  switch (end) {
    case WindEnd::length: return "length";
    case WindEnd::turns: return "turns";
    case WindEnd::diameter: return "diameter";
  }
  return "";
}

WindEnd wind_end_of(const PlanDraft& draft) {
  if (draft.wind.length_mm) return WindEnd::length;
  if (draft.wind.turns) return WindEnd::turns;
  return draft.wind.diameter_mm ? WindEnd::diameter : WindEnd::length;
}

PlanState with_wind_end(PlanState state, WindEnd end, const Wound* wound) {
  const bool laid = wound != nullptr && wound->pass.whole();
  const std::optional<double> value = laid ? reached(*wound, end) : estimated(state.draft, end);
  for (const WindEnd other : {WindEnd::length, WindEnd::turns, WindEnd::diameter}) {
    const std::string path = fmt::format("wind.{}", name_of(other));
    state = with_value(std::move(state), path, other == end ? value : std::nullopt);
  }
  return state;
}

PlanState with_values_of(PlanState state, const PlanDraft& target) {
  const std::size_t steps = target.wind.steps.size();
  while (state.draft.wind.steps.size() > steps) {
    const std::size_t last = state.draft.wind.steps.size() - 1;
    state = with_step_removed(std::move(state), last);
  }
  while (state.draft.wind.steps.size() < steps) state = with_step_added(std::move(state));
  for (const std::string& path : paths_of(target)) {
    const std::optional<double> value = value_at(target, path);
    if (value != value_at(state.draft, path)) state = with_value(std::move(state), path, value);
  }
  return state;
}

PlanDraft neat(const PlanDraft& from, PlanDraft target) {
  for (const std::string& path : paths_of(target)) {
    const std::optional<double> value = value_at(target, path);
    if (!value || value == value_at(from, path)) continue;
    const auto origin = from.origins.find(path);
    const std::string written = origin == from.origins.end() ? std::string() : origin->second.written;
    set_value(target, path, neat_value(*field_at(target, path), written, *value));
  }
  return target;
}

PlanState without_unknown(PlanState state) {
  Issues kept;
  std::copy_if(state.reading.begin(), state.reading.end(), std::back_inserter(kept),
               [&](const Issue& issue) { return !is_unknown(state, issue); });
  state.reading = std::move(kept);
  return state;
}

Issues unknown_in(const PlanState& state) {
  Issues unknown;
  std::copy_if(state.reading.begin(), state.reading.end(), std::back_inserter(unknown),
               [&](const Issue& issue) { return is_unknown(state, issue); });
  return unknown;
}

}  // namespace laywright
