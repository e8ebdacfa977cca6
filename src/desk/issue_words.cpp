#include "desk/issue_words.h"

#include <algorithm>
#include <cctype>
#include <iterator>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/spelling.h"
#include "plan/entry_issues.h"

namespace laywright {
namespace {

const FieldRow* row_at(std::string_view path, const std::vector<FieldRow>& rows) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const FieldRow& row) { return row.path == path; });
  return found == rows.end() ? nullptr : &*found;
}

// "wind.step[2]" is the third.
std::string step_name(std::string_view table) {
  constexpr std::string_view start = "wind.step[";
  if (table.substr(0, start.size()) != start) return "";
  return fmt::format("Step {}", std::stoul(std::string(table.substr(start.size()))) + 1);
}

// A key as a sentence of the plan's file may name it: its last part, or all of its path.
std::string_view name_of_key(std::string_view word) {
  for (const auto& field : plan_fields()) {
    const bool alone = field.key == word && word.find('_') != std::string_view::npos;
    if (alone || field.path() == word) return help_for(field.path()).name;
  }
  return word;
}

std::string without_keys(std::string_view text) {
  const auto in_word = [](unsigned char c) { return std::isalnum(c) != 0 || c == '_' || c == '.'; };
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i;
    while (end < text.size() && in_word(static_cast<unsigned char>(text[end]))) ++end;
    if (end == i) {
      out += text[i++];
      continue;
    }
    out += name_of_key(text.substr(i, end - i));
    i = end;
  }
  return out;
}

// Most of what is said of a value goes on from its name.
bool goes_on(std::string_view what) {
  constexpr std::string_view verbs[] = {"is ", "must ", "has ", "says ", "ends ", "changes ", "leaves ", "does "};
  return std::any_of(std::begin(verbs), std::end(verbs),
                     [&](std::string_view verb) { return what.starts_with(verb); });
}

bool is_bare_number(std::string_view value) {
  if (value.size() > 1 && value.front() == '"' && value.back() == '"') value = value.substr(1, value.size() - 2);
  return parse_decimal(value).has_value();
}

// Of the values that a table lacks.
std::string still_needed(std::string_view table, const std::vector<FieldRow>& rows) {
  std::string names;
  for (const FieldRow& row : rows) {
    if (row.table != table || !row.info->required || !row.text.empty()) continue;
    names += fmt::format("{}{}", names.empty() ? "" : ", ", row.help.name);
  }
  return names;
}

}  // namespace

std::string label_of(std::string_view key, const std::vector<FieldRow>& rows) {
  if (const FieldRow* row = row_at(key, rows)) {
    const std::string step = step_name(row->table);
    return step.empty() ? capitalised(std::string(row->help.name)) : fmt::format("{}, {}", step, row->help.name);
  }
  const std::string step = step_name(key);
  return step.empty() ? capitalised(std::string(table_title(key))) : step;
}

std::string issue_words(const Issue& issue, const std::vector<FieldRow>& rows) {
  const std::string label = label_of(issue.key, rows);
  const FieldRow* row = row_at(issue.key, rows);
  if (label.empty())
    return issue.key.empty() ? capitalised(issue.what) : fmt::format("In the file, {} {}", issue.key, issue.what);
  if (row != nullptr && issue.what.starts_with("is missing")) return fmt::format("{} is needed", label);
  if (const std::string needed = still_needed(issue.key, rows);
      row == nullptr && issue.line == 0 && !needed.empty()) {
    return fmt::format("{} is not filled in: {}", label, needed);
  }
  const bool no_unit =
      row != nullptr && row->unit != nullptr && row->text == issue.value && is_bare_number(issue.value);
  if (no_unit) {
    return fmt::format("{} has no unit in the file; type it again, alone for {} or with its unit", label,
                       row->unit->name);
  }
  const std::string what = without_keys(issue.what);
  std::string words = goes_on(what) ? fmt::format("{} {}", label, what) : fmt::format("{}: {}", label, what);
  // The range in the unit in which the form shows the value.
  const bool whole_range = row != nullptr && issue.what == out_of_range_words;
  const std::string& allowed = whole_range ? row->allowed : issue.allowed;
  if (!allowed.empty()) words += fmt::format(" (allowed: {})", allowed);
  return words;
}

}  // namespace laywright
