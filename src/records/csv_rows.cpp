#include "records/csv_rows.h"

#include <utility>

namespace laywright {
namespace {

class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file) : text_(text), file_(file) {
    constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
    if (text_.starts_with(byte_order_mark)) text_.remove_prefix(byte_order_mark.size());
  }

  Result<std::vector<CsvRow>> read() {
    while (at_ < text_.size() && issues_.empty()) {
      row_ = {line_, {}};
      while (read_field()) {
      }
      if (row_.cells.size() > 1 || !row_.cells.front().empty()) rows_.push_back(std::move(row_));
    }
    if (!issues_.empty()) return issues_;
    return std::move(rows_);
  }

 private:
  [[nodiscard]] bool over() const { return at_ >= text_.size(); }

  // True where another field follows in the row.
  bool read_field() {
    row_.cells.emplace_back();
    std::string& cell = row_.cells.back();
    if (!over() && text_[at_] == '"') {
      if (!read_quoted(cell)) return false;
    } else {
      while (!over() && text_[at_] != ',' && !at_line_end()) cell += text_[at_++];
      if (cell.find('"') != std::string::npos)
        return fail(line_, "holds a quotation mark within a field; put the whole field in quotes");
    }
    if (!over() && text_[at_] == ',') {
      ++at_;
      return true;
    }
    if (!over() && !at_line_end()) return fail(line_, "goes on behind the quotation mark that ends a field");
    end_line();
    return false;
  }

  bool read_quoted(std::string& cell) {
    const int begin = line_;
    for (++at_; !over(); ++at_) {
      const char c = text_[at_];
      if (c == '"') {
        if (at_ + 1 >= text_.size() || text_[at_ + 1] != '"') {
          ++at_;
          return true;
        }
        ++at_;
      }
      if (c == '\n') ++line_;
      cell += c;
    }
    return fail(begin, "opens a quotation mark that is never closed; is the table cut off?");
  }

  [[nodiscard]] bool at_line_end() const {
    return text_[at_] == '\n' || (text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n');
  }

  void end_line() {
    if (over()) return;
    at_ += text_[at_] == '\r' ? 2U : 1U;
    ++line_;
  }

  bool fail(int line, std::string what) {
    Issue issue;
    issue.file = file_;
    issue.line = line;
    issue.what = std::move(what);
    issues_.push_back(std::move(issue));
    return false;
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
  CsvRow row_;
  std::vector<CsvRow> rows_;
  Issues issues_;
};

}  // namespace

Result<std::vector<CsvRow>> read_csv_rows(std::string_view text, const std::string& file) {
  return CsvReader(text, file).read();
}

}  // namespace laywright
