#include "plan/plan_text.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {
namespace {

// Written on a line of its own, so that another key can be put below it.
bool is_own_line(const Entry& entry) {
  const bool structure = entry.kind == Entry::Kind::table || entry.kind == Entry::Kind::list;
  return !structure || entry.is_inline;
}

const Entry* last_own_line(const Entry& table) {
  const Entry* last = nullptr;
  for (const Entry& entry : table.children) {
    if (is_own_line(entry) && (last == nullptr || entry.end > last->end)) last = &entry;
  }
  return last;
}

// Where the text of a table ends, and of all tables in it.
std::size_t end_of(const Entry& entry) {
  std::size_t end = entry.end;
  for (const Entry& child : entry.children) end = std::max(end, end_of(child));
  return end;
}

}  // namespace

const Entry* find_table(const Entry& document, std::string_view path) {
  const Entry* at = &document;
  while (!path.empty() && at != nullptr) {
    const std::string_view part = path.substr(0, path.find('.'));
    path.remove_prefix(std::min(part.size() + 1, path.size()));
    const std::string_view name = part.substr(0, part.find('['));
    at = at->child(name);
    if (at == nullptr || name.size() == part.size()) continue;
    std::size_t index = 0;
    std::from_chars(part.data() + name.size() + 1, part.data() + part.size(), index);
    at = index < at->children.size() ? &at->children[index] : nullptr;
  }
  return at;
}

std::string toml_text(std::string_view text) {
  const std::string valid = valid_utf8(text);
  const bool over_lines = valid.find('\n') != std::string::npos;
  std::string result = over_lines ? "\"\"\"\n" : "\"";
  for (const char c : valid) {
    const auto code = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      result += fmt::format("\\{}", c);
    } else if ((code < 0x20 && c != '\n' && c != '\t') || code == 0x7f) {
      result += fmt::format("\\u{:04x}", code);
    } else {
      result += c;
    }
  }
  return result + (over_lines ? "\"\"\"" : "\"");
}

PlanText::PlanText(std::string_view text)
    : line_break_(text.find("\r\n") == std::string_view::npos ? "\n" : "\r\n") {
  edit(0, 0, std::string(text));
}

const Entry* PlanText::find(const std::string& table, std::string_view key) const {
  const Entry* found = find_table(document_, table);
  return found == nullptr ? nullptr : found->child(key);
}

void PlanText::set(const std::string& table, std::string_view key, const std::string& literal) {
  if (const Entry* entry = find(table, key)) return edit(entry->begin, entry->end, literal);
  const Entry* found = find_table(document_, table);
  const bool ready = found != nullptr && (found->is_inline || found->has_header || last_own_line(*found) != nullptr);
  if (ready) return add_key(*found, key, literal);
  const std::size_t dot = table.rfind('.');
  const Entry* parent = dot == std::string::npos ? nullptr : find_table(document_, table.substr(0, dot));
  const std::string line = fmt::format("{} = {}", key, literal);
  // An inline table cannot be added to by a header.
  if (parent != nullptr && parent->is_inline)
    return add_key(*parent, table.substr(dot + 1), fmt::format("{{ {} }}", line));
  add_table(parent == nullptr ? "" : table.substr(0, dot), fmt::format("[{}]", table), {line});
}

void PlanText::add_key(const Entry& table, std::string_view key, const std::string& literal) {
  const Entry* last = last_own_line(table);
  if (table.is_inline) {
    const std::string added = fmt::format("{} = {}", key, literal);
    if (last != nullptr) return edit(last->end, last->end, ", " + added);
    return edit(table.begin + 1, table.begin + 1, fmt::format(" {} ", added));
  }
  if (last == nullptr) {
    const std::size_t at = line_end(table.begin);
    return edit(at, at, fmt::format("{}{} = {}", line_break_, key, literal));
  }
  // The same indent, and the same "spool." where keys are dotted.
  const std::size_t begin = line_begin(last->key_begin);
  const std::string before = text_.substr(begin, last->key_begin - begin);
  const std::size_t at = line_end(last->end);
  edit(at, at, fmt::format("{}{}{} = {}", line_break_, before, key, literal));
}

void PlanText::remove(const std::string& table, std::string_view key) {
  const Entry* entry = find(table, key);
  if (entry == nullptr) return;
  const Entry* holder = find_table(document_, table);
  if (!holder->is_inline) return edit(line_begin(entry->key_begin), next_line(entry->end), "");
  // With the comma before it, or the one behind it where it is the first.
  const std::size_t comma = text_.find_first_not_of(" \t", entry->end);
  const std::size_t before = text_.find_last_of(",{", entry->key_begin);
  if (text_[before] == ',') return edit(before, entry->end, "");
  if (text_[comma] == ',') return edit(entry->key_begin, text_.find_first_not_of(" \t", comma + 1), "");
  edit(entry->key_begin, entry->end, "");
}

void PlanText::put_comment_for(const std::string& table, std::string_view key, const std::string& comment) {
  const Entry* entry = find(table, key);
  if (entry == nullptr || find_table(document_, table)->is_inline) return remove(table, key);
  edit(line_begin(entry->key_begin), entry->end, "# " + comment);
}

void PlanText::remove_table(const std::string& table) {
  const Entry* found = find_table(document_, table);
  if (found == nullptr) return;
  const std::size_t begin = line_begin(found->begin);
  std::size_t end = next_line(end_of(*found));
  // One of the blank lines around it goes with it.
  if (next_line(end) > end && text_.find_first_not_of(" \t\r", end) == next_line(end) - 1) end = next_line(end);
  edit(begin, end, "");
}

void PlanText::add_table(const std::string& behind, const std::string& header,
                         const std::vector<std::string>& lines) {
  const Entry* found = behind.empty() ? nullptr : find_table(document_, behind);
  const bool at_end = found == nullptr || !found->has_header;
  const Entry* last = at_end ? nullptr : last_own_line(*found);
  const std::size_t at = at_end ? text_.size() : line_end(last == nullptr ? found->begin : last->end);
  const bool broken = at == 0 || text_[at - 1] == '\n';
  std::string block = broken ? line_break_ : line_break_ + line_break_;
  block += header;
  for (const std::string& line : lines) block += line_break_ + line;
  if (at == text_.size()) block += line_break_;
  edit(at, at, block);
}

void PlanText::edit(std::size_t begin, std::size_t end, const std::string& replacement) {
  text_.replace(begin, end - begin, replacement);
  Result<Entry> parsed = read_document(text_, "");
  document_ = parsed.ok() ? std::move(parsed).value() : Entry{};
}

std::size_t PlanText::line_begin(std::size_t at) const {
  if (at == 0) return 0;
  const std::size_t line = text_.rfind('\n', at - 1);
  // A byte order mark stays at the front.
  return line == std::string::npos ? (text_.rfind("\xef\xbb\xbf", 0) == 0 ? 3 : 0) : line + 1;
}

std::size_t PlanText::line_end(std::size_t at) const {
  const std::size_t end = std::min(text_.find('\n', at), text_.size());
  return end > at && end < text_.size() && text_[end - 1] == '\r' ? end - 1 : end;
}

std::size_t PlanText::next_line(std::size_t at) const {
  return std::min(text_.find('\n', at), text_.size() - 1) + 1;
}

}  // namespace laywright
