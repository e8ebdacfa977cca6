#include "plan/plan_values.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include <fmt/format.h>

namespace laywright {
namespace {

// Index and key of "wind.step[2].pitch"; none for another path, or beyond the draft's steps.
struct StepPlace {
  std::size_t index;
  std::string_view key;
};
std::optional<StepPlace> step_place(const PlanDraft& draft, std::string_view path) {
  constexpr std::string_view start = "wind.step[";
  if (path.substr(0, start.size()) != start) return std::nullopt;
  std::size_t index = 0;
  const char* end = path.data() + path.size();
  const auto [rest, error] = std::from_chars(path.data() + start.size(), end, index);
  if (error != std::errc() || index >= draft.wind.steps.size()) return std::nullopt;
  const std::string_view tail(rest, static_cast<std::size_t>(end - rest));
  if (tail.substr(0, 2) != "].") return std::nullopt;
  return StepPlace{index, tail.substr(2)};
}

const Field<WindStep>* step_field(std::string_view key) {
  const auto& all = step_fields();
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& field) { return field.key == key; });
  return found == all.end() ? nullptr : &*found;
}

const Field<PlanDraft>* plan_field(std::string_view path) {
  const auto& all = plan_fields();
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& field) { return field.path() == path; });
  return found == all.end() ? nullptr : &*found;
}

// A field's list can set values but not take them away: so all others are set anew.
template <class Owner>
void copy_all_but(const std::vector<Field<Owner>>& fields, const Owner& from, std::string_view key_path, Owner& to) {
  for (const auto& field : fields) {
    const std::optional<double> value = field.get(from);
    if (value && field.path() != key_path) field.set(to, *value);
  }
}

}  // namespace

const FieldInfo* field_at(const PlanDraft& draft, std::string_view path) {
  if (const auto step = step_place(draft, path)) return step_field(step->key);
  return plan_field(path);
}

std::optional<double> value_at(const PlanDraft& draft, std::string_view path) {
  if (const auto step = step_place(draft, path)) {
    const Field<WindStep>* field = step_field(step->key);
    return field != nullptr ? field->get(draft.wind.steps[step->index]) : std::nullopt;
  }
  const Field<PlanDraft>* field = plan_field(path);
  return field != nullptr ? field->get(draft) : std::nullopt;
}

void set_value(PlanDraft& draft, std::string_view path, double value) {
  if (const auto step = step_place(draft, path)) {
    step_field(step->key)->set(draft.wind.steps[step->index], value);
  } else {
    plan_field(path)->set(draft, value);
  }
}

void clear_value(PlanDraft& draft, std::string_view path) {
  if (const auto step = step_place(draft, path)) {
    WindStep fresh;
    copy_all_but(step_fields(), draft.wind.steps[step->index], fmt::format("wind.step.{}", step->key), fresh);
    draft.wind.steps[step->index] = fresh;
    return;
  }
  PlanDraft fresh;
  if (draft.takeup) fresh.takeup.emplace();
  copy_all_but(plan_fields(), draft, path, fresh);
  if (const EntryValue* given = entry_value(draft, path)) plan_field(path)->set(fresh, given->value);
  fresh.wind.steps = draft.wind.steps;
  fresh.file = draft.file;
  fresh.title = draft.title;
  fresh.notes = draft.notes;
  fresh.order = draft.order;
  fresh.origins = draft.origins;
  fresh.entries = draft.entries;
  fresh.machine = draft.machine;
  draft = std::move(fresh);
}

}  // namespace laywright
