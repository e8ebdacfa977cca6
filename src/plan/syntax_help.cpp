#include "plan/syntax_help.h"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "base/decimal.h"
#include "base/readable.h"
#include "base/spelling.h"

namespace laywright {
namespace {

struct Assignment {
  std::string_view key;
  std::string_view value;
};

// "pitch = 0.26 mm  # comment", if its value is neither quoted, nor a number, nor anything else that TOML knows.
std::optional<Assignment> unquoted(std::string_view line) {
  line = line.substr(0, line.find('#'));
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return std::nullopt;
  const Assignment found{trimmed(line.substr(0, equals)), trimmed(line.substr(equals + 1))};
  const bool plain_key = !found.key.empty() && found.key.find_first_of(" \t\"'[{") == std::string_view::npos;
  const bool structured = found.value.find_first_of("\"'[]{}=") != std::string_view::npos;
  const bool known = found.value.empty() || found.value == "true" || found.value == "false";
  if (!plain_key || structured || known || parse_decimal(found.value)) return std::nullopt;
  return found;
}

// "[traverse.reversal]" or "[[wind.step]]": the name of the table.
std::string_view header_name(std::string_view line) {
  line = trimmed(line.substr(0, line.find('#')));
  if (line.empty() || line[0] != '[') return {};
  const std::size_t first = line.find_first_not_of('[');
  if (first == std::string_view::npos) return {};
  return trimmed(line.substr(first, line.find(']') - first));
}

Issue missing_quotes(const Assignment& found, std::string_view table, int line, const std::string& file) {
  Issue issue;
  issue.file = file;
  issue.line = line;
  issue.key = readable(table.empty() ? std::string(found.key) : fmt::format("{}.{}", table, found.key));
  issue.value = readable(found.value);
  issue.what = fmt::format("quotes are missing; write {} = \"{}\"", readable(found.key), readable(found.value));
  return issue;
}

// What the parser says is meant for programmers; what it most often means is said first.
struct Meaning {
  std::string_view words;
  std::string_view meaning;
};
constexpr Meaning meanings[] = {
    {"utf-8", "this line holds bytes that are not UTF-8 text; save the file as UTF-8"},
    {"redefine existing", "this key or table is given a second time; keep one of the two"},
    {"control characters", "a closing quote is missing"},
    {"end-of-file", "a closing quote or bracket is missing, here or further up"},
    {"escape sequence", "a backslash in text must be written twice"},
    {"inline table", "a closing brace, or a comma between keys, is missing"},
    {"parsing array", "a closing bracket, or a comma between values, is missing"},
    {"table header", "a table's name must stand in brackets, on a line of its own"},
    {"expected value", "the value is missing"},
    {"determine value type", "the value is neither a number, nor true, nor false, nor text in quotes"},
    {"comment or whitespace", "something follows the value that does not belong there"},
    {"expected '='", "a line must read: key = value"},
    {"expected keys", "a line must read: key = value"},
    {"while parsing floating-point", "the number cannot be read"},
    {"integer", "the number cannot be read"},
};

std::string in_plain_words(std::string_view complaint, std::string_view what) {
  std::string meaning = fmt::format("this line is not written as {} needs it", what);
  for (const Meaning& candidate : meanings) {
    if (complaint.find(candidate.words) == std::string_view::npos) continue;
    meaning = candidate.meaning;
    break;
  }
  return fmt::format("{} ({})", meaning, readable(complaint.substr(0, complaint.find('\n'))));
}

}  // namespace

Issues explain_syntax(std::string_view text, int line, std::string_view complaint, const std::string& file,
                      std::string_view what) {
  Issues issues;
  std::string_view table;
  bool at_fault = false;
  for (int number = 1; !text.empty() && issues.size() < most_told; ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view content = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (const std::string_view name = header_name(content); !name.empty()) table = name;
    if (const auto found = unquoted(content)) {
      issues.push_back(missing_quotes(*found, table, number, file));
      at_fault = at_fault || number == line;
    }
  }
  if (at_fault) return issues;
  Issue issue;
  issue.file = file;
  issue.line = line;
  issue.what = in_plain_words(complaint, what);
  return {issue};
}

}  // namespace laywright
