#include "base/issue.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/readable.h"

namespace laywright {

bool has_error(const Issues& issues) {
  return std::any_of(issues.begin(), issues.end(), [](const Issue& i) { return i.severity == Severity::error; });
}

std::string to_text(const Issue& issue) {
  std::string text;
  if (!issue.file.empty()) {
    text += issue.line > 0 ? fmt::format("{}:{}: ", issue.file, issue.line) : fmt::format("{}: ", issue.file);
  }
  text += issue.severity == Severity::error ? "error: " : "warning: ";
  if (!issue.key.empty()) {
    text += issue.value.empty() ? fmt::format("{}: ", issue.key) : fmt::format("{} = {}: ", issue.key, issue.value);
  }
  text += issue.what;
  if (!issue.allowed.empty()) text += fmt::format(" (allowed: {})", issue.allowed);
  return visible(text);
}

}  // namespace laywright
