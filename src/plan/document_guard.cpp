#include "plan/document_guard.h"

#include <fmt/format.h>

#include "plan/document.h"

namespace laywright {
namespace {

constexpr int deepest = 16;

// Walks over TOML and knows what is text and comment and what is structure.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  // Line of the first place that nests too deep; 0 if there is none.
  int too_deep() {
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (c == '"' || c == '\'') {
        skip_string(c);
        continue;
      }
      if (c == '#') {
        skip_to_line_end();
        continue;
      }
      count(c);
      if (brackets_ > deepest || dots_ > deepest) return line_;
      ++at_;
    }
    return 0;
  }

 private:
  void count(char c) {
    if (c == '\n') ++line_;
    if (c == '[' || c == '{') ++brackets_;
    if ((c == ']' || c == '}') && brackets_ > 0) --brackets_;
    if (c == '.') ++dots_;
    if (c == '=' || c == ',' || c == '\n' || c == '{') dots_ = 0;
  }

  void skip_to_line_end() {
    while (at_ < text_.size() && text_[at_] != '\n') ++at_;
  }

  // Leaves at_ after the string; one on a single line that is not closed ends with its line.
  void skip_string(char quote) {
    const std::string triple(3, quote);
    const bool over_lines = text_.substr(at_, 3) == triple;
    at_ += over_lines ? 3 : 1;
    while (at_ < text_.size()) {
      if (text_[at_] == '\n') {
        if (!over_lines) return;
        ++line_;
      }
      if (text_[at_] == '\\' && quote == '"') {
        // An escaped line end still counts as a line.
        if (at_ + 1 < text_.size() && text_[at_ + 1] != '\n') ++at_;
      } else if (over_lines ? text_.substr(at_, 3) == triple : text_[at_] == quote) {
        at_ += over_lines ? 3 : 1;
        return;
      }
      ++at_;
    }
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
  int brackets_ = 0;
  int dots_ = 0;
};

Issue refused(int line, std::string what) {
  Issue issue;
  issue.line = line;
  issue.what = std::move(what);
  return issue;
}

}  // namespace

std::optional<Issue> refuse_document(std::string_view text, std::string_view what) {
  if (text.size() > largest_plan_bytes) {
    return refused(0, fmt::format("is larger than {} MB, which {} never is. Is this the right file?",
                                  largest_plan_bytes / 1'000'000, what));
  }
  if (text.find('\0') != std::string_view::npos) {
    return refused(0, "is not a text file (it holds zero bytes). Is this the right file, and saved as UTF-8?");
  }
  if (const int line = Scanner(text).too_deep(); line > 0) {
    return refused(
        line, fmt::format("nests brackets or dotted keys deeper than {} levels; {} needs three", deepest, what));
  }
  return std::nullopt;
}

}  // namespace laywright
