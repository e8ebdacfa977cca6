#include "plan/checker.h"

#include <algorithm>
#include <charconv>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "base/readable.h"
#include "plan/entry_issues.h"

namespace laywright {
namespace {

struct Place {
  const FieldInfo* field = nullptr;  // null for tables and texts
  std::optional<double> value;
};

// The step that a path like "wind.step[2].pitch" leads to; none if it is another path.
std::optional<std::size_t> step_index(const PlanDraft& draft, std::string_view path) {
  constexpr std::string_view start = "wind.step[";
  if (path.substr(0, start.size()) != start) return std::nullopt;
  std::size_t index = 0;
  const std::from_chars_result read = std::from_chars(path.data() + start.size(), path.data() + path.size(), index);
  if (read.ec != std::errc() || index >= draft.wind.steps.size()) return std::nullopt;
  return index;
}

// Looks a key path up: "spool.mass", "wind.step[2].pitch".
Place find_place(const PlanDraft& draft, std::string_view path) {
  const std::size_t dot = path.rfind('.');
  if (dot == std::string_view::npos) return {};
  const std::string_view table = path.substr(0, dot);
  const std::string_view key = path.substr(dot + 1);
  if (const std::optional<std::size_t> index = step_index(draft, path)) {
    for (const auto& field : step_fields()) {
      if (field.key == key) return {&field, field.get(draft.wind.steps[*index])};
    }
  }
  for (const auto& field : plan_fields()) {
    if (field.table == table && field.key == key) return {&field, field.get(draft)};
  }
  return {};
}

// The origin of the value or, where the file does not give it, of the table that would hold it.
const PlanDraft::Origin* origin_of(const PlanDraft& draft, std::string path) {
  while (true) {
    if (const auto found = draft.origins.find(path); found != draft.origins.end()) return &found->second;
    const std::size_t dot = path.rfind('.');
    if (dot == std::string::npos) return nullptr;
    path.erase(dot);
  }
}

std::string spelling(const PlanDraft& draft, const std::string& path) {
  const auto found = draft.origins.find(path);
  return found == draft.origins.end() ? "" : found->second.written;
}

}  // namespace

bool Checker::sound(std::initializer_list<const char*> paths) const {
  return std::all_of(paths.begin(), paths.end(), [&](const char* path) { return sound(std::string(path)); });
}

void Checker::error(const std::string& path, std::string what, std::string allowed) {
  add(Severity::error, path, std::move(what), std::move(allowed));
  unsound_.insert(path);
}

void Checker::warn(const std::string& path, std::string what) { add(Severity::warning, path, std::move(what), ""); }

void Checker::out_of_range(const std::string& path, const FieldInfo& field) {
  error(path, out_of_range_words, allowed_text(field, unit_written(field, spelling(draft_, path))));
}

std::string Checker::shown(const std::string& path) const {
  const Place place = find_place(draft_, path);
  if (place.field == nullptr || !place.value) return "";
  const std::string written = spelling(draft_, path);
  if (place.field->kind != FieldKind::quantity) return write_value(*place.field, *place.value);
  // The draft may have been changed since it was read.
  const ParsedQuantity parsed = parse_quantity(written, place.field->dimension);
  if (parsed.quantity && parsed.quantity->value == *place.value) return readable(written);
  return in_unit_of(path, *place.value);
}

std::string Checker::in_unit_of(const std::string& path, double value) const {
  const Place place = find_place(draft_, path);
  if (place.field == nullptr || place.field->kind != FieldKind::quantity) return setting(value);
  if (value - value != 0.0) return fmt::format("{}", value);  // NaN and infinity have no digits to round
  return format_quantity(value, *unit_written(*place.field, spelling(draft_, path)), 6);
}

Issues Checker::take_issues() {
  std::stable_sort(issues_.begin(), issues_.end(), [](const Issue& a, const Issue& b) { return a.line < b.line; });
  return std::exchange(issues_, {});
}

void Checker::add(Severity severity, const std::string& path, std::string what, std::string allowed) {
  const PlanDraft::Origin* origin = origin_of(draft_, path);
  Issue issue =
      issue_at(draft_.file, origin != nullptr ? origin->line : 0, path, "", std::move(what), std::move(allowed));
  issue.severity = severity;
  const Place place = find_place(draft_, path);
  if (place.field != nullptr && place.value) {
    const bool in_quotes = place.field->kind == FieldKind::quantity || place.field->kind == FieldKind::choice;
    issue.value = in_quotes ? fmt::format("\"{}\"", shown(path)) : shown(path);
  }
  const EntryValue* given = entry_value(draft_, path);
  if (given != nullptr && place.value == given->value)
    issue.what += fmt::format("; it comes from {}", place_of(*giver_of(draft_, path)));
  issues_.push_back(std::move(issue));
}

}  // namespace laywright
