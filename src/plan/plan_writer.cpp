#include "plan/plan_writer.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/atomic_file.h"
#include "base/readable.h"
#include "plan/dial_text.h"
#include "plan/fields.h"
#include "plan/flatten.h"
#include "plan/plan_file.h"
#include "plan/plan_text.h"

namespace laywright {
namespace {

std::string written_before(const PlanDraft& draft, const std::string& path) {
  const auto found = draft.origins.find(path);
  return found == draft.origins.end() ? "" : found->second.written;
}

// A value as TOML, in the unit of `written` and with or without a space before it as there.
std::string literal_of(const FieldInfo& field, double value, const std::string& written, char quote = '"') {
  std::string text = write_value(field, value, unit_written(field, written));
  if (field.kind == FieldKind::quantity && !written.empty() && written.find(' ') == std::string::npos) {
    text.erase(text.find(' '), 1);
  }
  return in_quotes(field, text) ? fmt::format("{}{}{}", quote, text, quote) : text;
}

template <class Owner>
bool same_fields(const std::vector<Field<Owner>>& fields, const Owner& a, const Owner& b) {
  return std::all_of(fields.begin(), fields.end(), [&](const auto& field) { return field.get(a) == field.get(b); });
}

// "key = value" for each value that has to be written.
template <class Owner>
std::vector<std::string> lines_of(const std::vector<Field<Owner>>& fields, const Owner& owner, const Owner& defaults,
                                  std::string_view table, const std::string& path, const PlanDraft& origins) {
  std::vector<std::string> lines;
  for (const auto& field : fields) {
    const std::optional<double> value = field.get(owner);
    const bool told = field.required || field.kind == FieldKind::choice || value != field.get(defaults);
    if (field.table != table || !value || !told) continue;
    const std::string written = written_before(origins, fmt::format("{}.{}", path, field.key));
    lines.push_back(fmt::format("{} = {}", field.key, literal_of(field, *value, written)));
  }
  return lines;
}

std::vector<std::string> step_lines(const PlanDraft& draft, std::size_t index) {
  return lines_of(step_fields(), draft.wind.steps[index], WindStep{}, "wind.step", step_path(index), draft);
}

// The defaults of a draft that has a take-up.
PlanDraft defaults() {
  PlanDraft draft;
  draft.takeup.emplace();
  return draft;
}

void write_table(std::string& text, const PlanDraft& draft, const std::string& table) {
  const std::vector<std::string> lines = lines_of(plan_fields(), draft, defaults(), table, table, draft);
  if (!lines.empty()) text += fmt::format("\n[{}]\n{}\n", table, fmt::join(lines, "\n"));
}

template <class Owner>
void save_fields(PlanText& text, const std::vector<Field<Owner>>& fields, const Owner& before, const Owner& after,
                 const std::string& step) {
  for (const auto& field : fields) {
    const std::string table = step.empty() ? std::string(field.table) : step;
    const std::optional<double> value = field.get(after);
    if (value == field.get(before)) continue;
    if (!value) {
      text.remove(table, field.key);
      continue;
    }
    const Entry* entry = text.find(table, field.key);
    const std::string written = entry == nullptr ? "" : entry->text;
    const char quote = entry != nullptr && text.text()[entry->begin] == '\'' ? '\'' : '"';
    text.set(table, field.key, literal_of(field, *value, written, quote));
  }
}

// Which step of `steps` begins at that layer; none if none does.
std::optional<std::size_t> step_from(const std::vector<WindStep>& steps, int layer) {
  const auto found =
      std::find_if(steps.begin(), steps.end(), [&](const WindStep& s) { return s.from_layer == layer; });
  if (found == steps.end()) return std::nullopt;
  return static_cast<std::size_t>(found - steps.begin());
}

std::string inline_steps(const PlanDraft& draft) {
  std::vector<std::string> items;
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    items.push_back(fmt::format("{{ {} }}", fmt::join(step_lines(draft, i), ", ")));
  }
  return fmt::format("[{}]", fmt::join(items, ", "));
}

// Steps keep their comments as long as their layer is kept; where none came or went, they are matched by place.
void save_steps(PlanText& text, const PlanDraft& before, const PlanDraft& after) {
  const std::vector<WindStep>& wanted = after.wind.steps;
  std::vector<WindStep> present = before.wind.steps;
  const Entry* list = text.find("wind", "step");
  const Entry* wind = find_table(text.document(), "wind");
  if ((list != nullptr && list->is_inline) || (wind != nullptr && wind->is_inline)) {
    if (present.size() == wanted.size() &&
        std::equal(present.begin(), present.end(), wanted.begin(),
                   [](const auto& a, const auto& b) { return same_fields(step_fields(), a, b); }))
      return;
    return text.set("wind", "step", inline_steps(after));
  }
  if (present.size() != wanted.size()) {
    for (std::size_t i = present.size(); i-- > 0;) {
      if (step_from(wanted, present[i].from_layer)) continue;
      text.remove_table(step_path(i));
      present.erase(present.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const bool is_new =
        present.size() < wanted.size() && (i >= present.size() || present[i].from_layer != wanted[i].from_layer);
    if (!is_new) {
      save_fields(text, step_fields(), present[i], wanted[i], step_path(i));
      continue;
    }
    text.add_table(i == 0 ? "wind" : step_path(i - 1), "[[wind.step]]", step_lines(after, i));
    present.insert(present.begin() + static_cast<std::ptrdiff_t>(i), wanted[i]);
  }
}

void write_order(std::string& text, const PlanOrder& order) {
  std::string lines;
  for (const OrderField& field : order_fields()) {
    if (const std::string& words = order.*field.text; !words.empty())
      lines += fmt::format("{} = {}\n", field.key, toml_text(words));
  }
  if (!lines.empty()) text += fmt::format("\n[{}]\n{}", order_table, lines);
}

void save_order(PlanText& text, const PlanOrder& before, const PlanOrder& after) {
  const std::string table(order_table);
  for (const OrderField& field : order_fields()) {
    const std::string& words = after.*field.text;
    if (words == before.*field.text) continue;
    if (words.empty()) {
      text.remove(table, field.key);
    } else {
      text.set(table, field.key, toml_text(words));
    }
  }
}

void save_takeup(PlanText& text, const PlanDraft& before, const PlanDraft& after) {
  if (!after.takeup) return text.remove_table("takeup");
  if (before.takeup) return;
  const std::vector<std::string> lines = lines_of(plan_fields(), after, defaults(), "takeup", "takeup", after);
  text.add_table("", "[takeup]", lines);
}

// A name that went leaves its values behind, one that came stands over the keys that the text has.
void save_names(PlanText& text, const PlanDraft& before, const PlanDraft& after) {
  for (const EntryKind kind : entry_kinds) {
    const NamedEntry* was = entry_of(before, kind);
    const NamedEntry* is = entry_of(after, kind);
    if (was != nullptr && (is == nullptr || is->name != was->name)) write_in(text, *was);
    if (is != nullptr && (was == nullptr || is->name != was->name))
      text.set(std::string(name_of(kind)), "name", toml_text(is->name));
  }
}

bool says(std::string_view text, const PlanDraft& draft) {
  const EntriesOf entries(draft);
  const Result<PlanDraft> read = read_plan(text, draft.file, &entries);
  return read.ok() && same_plan(read.value(), draft);
}

// The path of a value that a file cannot say; empty if there is none.
template <class Owner>
std::string not_finite(const std::vector<Field<Owner>>& fields, const Owner& owner, const std::string& step) {
  for (const auto& field : fields) {
    const double value = field.get(owner).value_or(0.0);
    const bool held = field.kind == FieldKind::friction && value == Fiber::held;
    if (!std::isfinite(value) && !held) return step.empty() ? field.path() : fmt::format("{}.{}", step, field.key);
  }
  return "";
}

std::string not_finite(const PlanDraft& draft) {
  std::string path = not_finite(plan_fields(), draft, "");
  for (std::size_t i = 0; i < draft.wind.steps.size() && path.empty(); ++i) {
    path = not_finite(step_fields(), draft.wind.steps[i], step_path(i));
  }
  return path;
}

Result<std::string> save_text(const std::filesystem::path& path, std::string text, const PlanDraft& draft) {
  if (std::string key = not_finite(draft); !key.empty()) {
    Issue issue;
    issue.file = path.string();
    issue.key = std::move(key);
    issue.what = "is not a finite number and cannot be saved; give it a value first";
    return issue;
  }
  if (Issues issues = write_file_atomically(path, text); !issues.empty()) return issues;
  return text;
}

}  // namespace

bool same_plan(const PlanDraft& a, const PlanDraft& b) {
  const auto same_step = [](const WindStep& one, const WindStep& other) {
    return same_fields(step_fields(), one, other);
  };
  const auto same_name = [](const NamedEntry& one, const NamedEntry& other) {
    return one.kind == other.kind && one.name == other.name;
  };
  return a.title == b.title && a.notes == b.notes && a.order == b.order &&
         std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(), same_name) &&
         a.machine == b.machine && a.takeup.has_value() == b.takeup.has_value() &&
         same_fields(plan_fields(), a, b) &&
         std::equal(a.wind.steps.begin(), a.wind.steps.end(), b.wind.steps.begin(), b.wind.steps.end(), same_step);
}

std::string write_plan(const PlanDraft& draft) {
  std::string text = fmt::format("format = \"{}\"\ntitle = {}\nnotes = {}\n", format_line, toml_text(draft.title),
                                 toml_text(draft.notes));
  write_order(text, draft.order);
  for (const char* table : {"spool", "fiber", "traverse", "traverse.reversal", "wind"})
    write_table(text, draft, table);
  for (std::size_t i = 0; i < draft.wind.steps.size(); ++i) {
    text += fmt::format("\n[[wind.step]]\n{}\n", fmt::join(step_lines(draft, i), "\n"));
  }
  for (const char* table : {"takeup", "limits"}) write_table(text, draft, table);
  for (const DialLines& each : lines_of(draft.machine)) {
    text += fmt::format("\n[{}]\n", each.table);
    for (const auto& [key, written] : each.keys) text += fmt::format("{} = {}\n", key, written);
  }
  return text;
}

std::string write_plan(std::string_view original_text, const PlanDraft& before, const PlanDraft& draft) {
  PlanDraft after = draft;
  after.title = valid_utf8(draft.title);
  after.notes = valid_utf8(draft.notes);
  for (const OrderField& field : order_fields()) after.order.*field.text = valid_utf8(draft.order.*field.text);
  PlanText text(original_text);
  if (after.title != before.title) text.set("", "title", toml_text(after.title));
  if (after.notes != before.notes) text.set("", "notes", toml_text(after.notes));
  save_order(text, before.order, after.order);
  save_names(text, before, after);
  save_takeup(text, before, after);
  PlanDraft start = before;
  if (after.takeup.has_value() != before.takeup.has_value()) start.takeup = after.takeup;
  save_fields(text, plan_fields(), start, after, "");
  save_steps(text, before, after);
  return says(text.text(), after) ? text.text() : write_plan(without_entries(after));
}

Result<std::string> save_plan(const std::filesystem::path& path, const PlanDraft& draft) {
  return save_text(path, write_plan(draft), draft);
}

Result<std::string> save_plan(const std::filesystem::path& path, std::string_view original_text,
                              const PlanDraft& before, const PlanDraft& after) {
  return save_text(path, write_plan(original_text, before, after), after);
}

}  // namespace laywright
