#include "plan/entry_issues.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"
#include "plan/value_reader.h"

namespace laywright {

Issue issue_at(const std::string& file, int line, std::string_view key, std::string value, std::string what,
               std::string allowed) {
  Issue issue;
  issue.file = file;
  issue.line = line;
  issue.key = readable(key);
  issue.value = std::move(value);
  issue.allowed = std::move(allowed);
  issue.what = std::move(what);
  return issue;
}

Issue issue_at(const std::string& file, const Entry& at, std::string_view key, std::string what,
               std::string allowed) {
  return issue_at(file, at.line, key, shown_value(at), std::move(what), std::move(allowed));
}

void EntryIssues::add(const Entry& at, std::string_view key, std::string what, std::string allowed) {
  issues_.push_back(issue_at(file_, at, key, std::move(what), std::move(allowed)));
}

void EntryIssues::add(int line, std::string_view key, std::string value, std::string what, std::string allowed) {
  issues_.push_back(issue_at(file_, line, key, std::move(value), std::move(what), std::move(allowed)));
}

bool EntryIssues::has_format(const Entry& document, const FileFormat& format) {
  constexpr std::string_view key = "format";
  const Entry* found = document.child(key);
  const std::string choice = fmt::format("\"{}\"", format.line);
  if (found == nullptr) {
    add(0, key, "", fmt::format("is missing; begin the {} with the line: format = {}", format.noun, choice));
    return false;
  }
  if (found->kind == Entry::Kind::text && found->text == format.line) return true;
  const std::string_view family = format.line.substr(0, format.line.rfind(' ') + 1);
  const bool another = found->kind == Entry::Kind::text && found->text.starts_with(family);
  add(*found, key,
      another ? std::string("is a format that this program does not know, perhaps of a newer version of it")
              : fmt::format("does not say that this is {}", format.what),
      choice);
  return false;
}

bool EntryIssues::is_table(const Entry& entry, std::string_view path) {
  if (entry.kind == Entry::Kind::table) return true;
  add(entry, path, fmt::format("must be a table: a line [{}], and its keys below", path));
  return false;
}

bool EntryIssues::is_list_of_tables(const Entry& entry, std::string_view path) {
  const bool of_tables = std::all_of(entry.children.begin(), entry.children.end(),
                                     [](const Entry& e) { return e.kind == Entry::Kind::table; });
  if (entry.kind == Entry::Kind::list && of_tables) return true;
  add(entry, path, fmt::format("must be a list of tables: for each a line [[{}]], and its keys below", path));
  return false;
}

std::optional<double> EntryIssues::number(const FieldInfo& field, const Entry& entry, std::string_view key) {
  ReadValue read = read_value(field, entry);
  if (!read.number) {
    add(entry, key, std::move(read.problem), std::move(read.allowed));
    return std::nullopt;
  }
  if (in_range(field, *read.number)) return read.number;
  add(entry, key, out_of_range_words, allowed_text(field, unit_written(field, entry.text)));
  return std::nullopt;
}

}  // namespace laywright
