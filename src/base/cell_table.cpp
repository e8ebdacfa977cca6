#include "base/cell_table.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "base/spelling.h"

namespace laywright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr char quote = '"';

// The first row that counts: without remarks and blank lines.
std::string_view first_row(std::string_view text) {
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view line = trimmed(text.substr(begin, end - begin));
    const std::string_view inside = trimmed(line, "\"");
    if (!trimmed(inside, " \t\r,;").empty() && inside.front() != '#') return line;
    begin = end + 1;
  }
  return {};
}

char separator_in(std::string_view row) {
  bool quoted = false, tab = false;
  for (const char c : row) {
    if (c == quote) quoted = !quoted;
    if (quoted) continue;
    if (c == ';') return ';';
    if (c == '\t') tab = true;
  }
  return tab ? '\t' : ',';
}

// "sep=;" and its line end, taken off.
std::optional<char> take_separator(std::string_view& text) {
  constexpr std::string_view key = "sep=";
  if (text.size() <= key.size() || lower(text.substr(0, key.size())) != key) return std::nullopt;
  const char separator = text[key.size()];
  const std::string_view rest = text.substr(key.size() + 1, text.find('\n') - key.size() - 1);
  if (!trimmed(rest).empty()) return std::nullopt;
  return separator;
}

class CellReader {
 public:
  CellReader(std::string_view text, char separator, int line) : text_(text), separator_(separator), line_(line) {}

  std::vector<CellRow> read() && {
    begin_row();
    for (at_ = 0; at_ < text_.size(); ++at_) take(text_[at_]);
    end_cell();
    end_row();
    return std::move(rows_);
  }

 private:
  void take(char c) {
    if (c == '\n') ++line_;
    if (quoted_) {
      if (c != quote) {
        cell_ += c;
      } else if (at_ + 1 < text_.size() && text_[at_ + 1] == quote) {
        cell_ += quote;
        ++at_;
      } else {
        quoted_ = false;
      }
    } else if (c == quote && trimmed(cell_).empty()) {
      cell_.clear();
      quoted_ = true;
    } else if (c == '#' && row_.cells.empty() && trimmed(cell_).empty()) {
      at_ = std::min(text_.find('\n', at_), text_.size()) - 1;  // a remark, whatever its quotes
    } else if (c == separator_) {
      end_cell();
    } else if (c == '\n') {
      end_cell();
      end_row();
      begin_row();
    } else {
      cell_ += c;
    }
  }
  void begin_row() { row_ = {line_, {}}; }
  void end_cell() {
    row_.cells.emplace_back(trimmed(cell_));
    cell_.clear();
  }
  void end_row() {
    const std::string& first = row_.cells.front();
    const bool remark = !first.empty() && first.front() == '#';
    if (!remark && !row_.empty()) rows_.push_back(std::move(row_));
  }

  std::string_view text_;
  char separator_;
  int line_;
  std::size_t at_ = 0;
  bool quoted_ = false;
  std::string cell_;
  CellRow row_;
  std::vector<CellRow> rows_;
};

}  // namespace

bool CellRow::empty() const {
  return std::all_of(cells.begin(), cells.end(), [](const std::string& cell) { return cell.empty(); });
}

std::vector<CellRow> read_cells(std::string_view text) {
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
  int line = 1;
  std::optional<char> separator = take_separator(text);
  if (separator) {
    const std::size_t end = text.find('\n');
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    ++line;
  }
  return CellReader(text, separator.value_or(separator_in(first_row(text))), line).read();
}

}  // namespace laywright
