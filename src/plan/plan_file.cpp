#include "plan/plan_file.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "base/read_file.h"
#include "plan/checker.h"
#include "plan/document.h"
#include "plan/reading.h"
#include "plan/syntax_help.h"

namespace laywright {
namespace {

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

}  // namespace

Result<PlanDraft> read_plan(std::string_view text, std::string file_name, const EntrySource* entries) {
  DraftReading reading = read_draft(text, std::move(file_name), entries);
  Issues issues = in_order(std::move(reading.issues));
  if (has_error(issues)) return issues;
  return {std::move(reading.draft), std::move(issues)};
}

Result<Plan> plan_from_text(std::string_view text, std::string file_name, const EntrySource* entries) {
  DraftReading reading = read_draft(text, std::move(file_name), entries);
  if (reading.issues.empty()) return check(reading.draft);
  if (reading.has_values) {
    const Issues more = issues_of(reading.draft, reading.unread);
    reading.issues.insert(reading.issues.end(), more.begin(), more.end());
  }
  return in_order(std::move(reading.issues));
}

Result<std::string> read_plan_text(const std::filesystem::path& path) {
  return read_file(path, a_plan, largest_plan_bytes);
}

Result<Plan> load_plan(const std::filesystem::path& path, const EntrySource* entries) {
  const Result<std::string> text = read_plan_text(path);
  if (!text) return text.issues();
  return plan_from_text(text.value(), path.string(), entries);
}

}  // namespace laywright
