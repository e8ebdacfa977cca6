#include "plan/plan_file.h"

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <system_error>
#include <utility>

#include <fmt/format.h>

#include "plan/checker.h"
#include "plan/document.h"
#include "plan/reading.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_told = 100;

// In the order of the lines, the first hundred.
Issues in_order(Issues issues) {
  std::stable_sort(issues.begin(), issues.end(), [](const Issue& a, const Issue& b) { return a.line < b.line; });
  if (issues.size() <= most_told) return issues;
  Issue rest;
  rest.file = issues.front().file;
  rest.what = fmt::format("has {} more issues, not listed here", issues.size() - most_told);
  issues.resize(most_told);
  issues.push_back(std::move(rest));
  return issues;
}

Issue cannot_read(const fs::path& path, const std::string& why) {
  Issue issue;
  issue.file = path.string();
  issue.what = why;
  return issue;
}

}  // namespace

Result<PlanDraft> read_plan(std::string_view text, std::string file_name) {
  DraftReading reading = read_draft(text, std::move(file_name));
  Issues issues = in_order(std::move(reading.issues));
  if (has_error(issues)) return issues;
  return {std::move(reading.draft), std::move(issues)};
}

Result<Plan> plan_from_text(std::string_view text, std::string file_name) {
  DraftReading reading = read_draft(text, std::move(file_name));
  if (reading.issues.empty()) return check(reading.draft);
  if (reading.readable) {
    const Issues more = issues_of(reading.draft, reading.unread);
    reading.issues.insert(reading.issues.end(), more.begin(), more.end());
  }
  return in_order(std::move(reading.issues));
}

Result<std::string> read_plan_text(const fs::path& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found) return cannot_read(path, "there is no such file");
  if (fs::is_directory(status)) return cannot_read(path, "is a folder; give the name of a lay plan in it");
  errno = 0;
  std::ifstream in(path, std::ios::binary);
  if (!in) return cannot_read(path, fmt::format("cannot be opened: {}", std::generic_category().message(errno)));
  // One byte beyond the limit is enough to refuse the rest, whatever the file is and however long.
  std::string text(largest_plan_bytes + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (in.bad()) return cannot_read(path, "cannot be read to its end");
  text.resize(static_cast<std::size_t>(in.gcount()));
  return text;
}

Result<Plan> load_plan(const fs::path& path) {
  const Result<std::string> text = read_plan_text(path);
  if (!text) return text.issues();
  return plan_from_text(text.value(), path.string());
}

}  // namespace laywright
