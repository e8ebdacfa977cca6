#include "desk/plan_state.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/readable.h"
#include "base/typed_quantity.h"
#include "plan/checker.h"
#include "plan/plan_writer.h"
#include "plan/reading.h"
#include "plan/value_reader.h"

namespace laywright {
namespace {

std::string written_at(const PlanDraft& draft, const std::string& path) {
  const auto found = draft.origins.find(path);
  return found == draft.origins.end() ? "" : found->second.written;
}

// What was said about this value, or about the table that lacks it, is no longer so.
void forget_issues(PlanState& state, const std::string& path) {
  state.unread.erase(path);
  const std::string table = path.substr(0, path.rfind('.'));
  const bool table_complete = std::none_of(state.unread.begin(), state.unread.end(), [&](const std::string& other) {
    return other.rfind(table + ".", 0) == 0;
  });
  const auto settled = [&](const Issue& issue) {
    return issue.key == path || (table_complete && issue.key == table);
  };
  state.reading.erase(std::remove_if(state.reading.begin(), state.reading.end(), settled), state.reading.end());
}

void add_issue(PlanState& state, const std::string& path, std::string value, std::string what, std::string allowed) {
  Issue issue;
  issue.file = state.draft.file;
  const auto origin = state.draft.origins.find(path);
  issue.line = origin == state.draft.origins.end() ? 0 : origin->second.line;
  issue.key = path;
  issue.value = std::move(value);
  issue.what = std::move(what);
  issue.allowed = std::move(allowed);
  state.reading.push_back(std::move(issue));
  state.unread.insert(path);
}

// What was typed, as a plan's text would have it.
Entry entry_of(const FieldInfo& field, const std::string& text, const Unit* unit) {
  Entry entry;
  entry.kind = Entry::Kind::text;
  entry.text = text;
  const std::optional<Decimal> decimal = parse_decimal(text);
  if (!decimal) return entry;
  if (field.kind == FieldKind::quantity) {
    entry.text = fmt::format("{} {}", text, unit->name);
  } else if (const std::optional<double> number = to_double(*decimal)) {
    entry.kind = Entry::Kind::number;
    entry.number = *number;
  }
  return entry;
}

}  // namespace

bool same_state(const PlanState& a, const PlanState& b) {
  const auto same_issue = [](const Issue& x, const Issue& y) { return x.key == y.key && x.value == y.value; };
  return a.unread == b.unread && same_plan(a.draft, b.draft) &&
         std::equal(a.reading.begin(), a.reading.end(), b.reading.begin(), b.reading.end(), same_issue);
}

bool same_wind(const PlanDraft& a, PlanDraft b) {
  b.title = a.title;
  b.notes = a.notes;
  b.order = a.order;
  return same_plan(a, b);
}

Result<PlanState> state_from_text(std::string_view text, std::string file_name, const EntrySource* entries) {
  DraftReading reading = read_draft(text, std::move(file_name), entries);
  if (!reading.readable) return reading.issues;
  return PlanState{std::move(reading.draft), std::move(reading.unread), std::move(reading.issues)};
}

PlanState with_value(PlanState state, std::string_view path, std::optional<double> value, const Unit* unit) {
  const FieldInfo* field = field_at(state.draft, path);
  if (field == nullptr) return state;
  const std::string key(path);
  forget_issues(state, key);
  if (!value) {
    clear_value(state.draft, path);
    state.draft.origins.erase(key);
    if (const EntryValue* given = entry_value(state.draft, path)) {
      state.draft.origins[key].written = given->written;
    } else if (field->required) {
      add_issue(state, key, "", "is missing; give it a value", allowed_text(*field));
    }
    return state;
  }
  set_value(state.draft, path, *value);
  if (unit == nullptr) unit = unit_written(*field, written_at(state.draft, key));
  state.draft.origins[key].written = write_value(*field, *value, unit);
  return state;
}

PlanState with_text(PlanState state, std::string_view path, const std::string& text, const Unit* unit) {
  const FieldInfo* field = field_at(state.draft, path);
  if (field == nullptr) return state;
  const bool is_quantity = field->kind == FieldKind::quantity;
  const std::string typed = as_written(text, is_quantity ? std::optional(field->dimension) : std::nullopt);
  if (typed.empty()) return with_value(std::move(state), path, std::nullopt);
  if (unit == nullptr) unit = unit_written(*field, written_at(state.draft, std::string(path)));
  ReadValue read = read_value(*field, entry_of(*field, typed, unit));
  if (!read.number) {
    forget_issues(state, std::string(path));
    add_issue(state, std::string(path), readable(typed), std::move(read.problem), std::move(read.allowed));
    return state;
  }
  const bool says_unit = is_quantity && !parse_decimal(typed);
  return with_value(std::move(state), path, read.number, says_unit ? unit_written(*field, typed) : nullptr);
}

Issues issues_in(const PlanState& state) {
  Issues issues = state.reading;
  const Issues more = issues_of(state.draft, state.unread);
  issues.insert(issues.end(), more.begin(), more.end());
  std::stable_sort(issues.begin(), issues.end(), [](const Issue& a, const Issue& b) { return a.line < b.line; });
  return issues;
}

}  // namespace laywright
