#include <fmt/format.h>

#include "base/readable.h"
#include "plan/checker.h"
#include "plan/dialling.h"
#include "plan/plan_writer.h"

namespace laywright {
namespace {

template <class Owner>
void check_ranges_of(Checker& checker, const std::vector<Field<Owner>>& fields, const Owner& owner,
                     const std::string& table) {
  for (const auto& field : fields) {
    const std::string path = (table.empty() ? std::string(field.table) : table) + "." + std::string(field.key);
    const std::optional<double> value = field.get(owner);
    if (!value || !checker.sound(path) || in_range(field, *value)) continue;
    checker.out_of_range(path, field);
  }
}

void check_title(Checker& checker) {
  const std::size_t length = character_count(checker.draft().title);
  if (length <= longest_title) return;
  checker.error("title", fmt::format("is too long, {} characters; leave the rest to the notes", length),
                fmt::format("up to {} characters", longest_title));
}

void check_order(Checker& checker) {
  for (const OrderField& field : order_fields()) {
    const std::size_t length = character_count(checker.draft().order.*field.text);
    if (length <= longest_order_text) continue;
    checker.error(field.path(), fmt::format("is too long, {} characters; leave the rest to the notes", length),
                  fmt::format("up to {} characters", longest_order_text));
  }
}

}  // namespace

void check_ranges(Checker& checker) {
  check_ranges_of(checker, plan_fields(), checker.draft(), "");
  const std::vector<WindStep>& steps = checker.draft().wind.steps;
  for (std::size_t i = 0; i < steps.size(); ++i) check_ranges_of(checker, step_fields(), steps[i], step_path(i));
}

Issues issues_of(const PlanDraft& draft, const std::set<std::string>& unread) {
  Checker checker(draft, unread);
  check_title(checker);
  check_order(checker);
  check_ranges(checker);
  check_spool_and_fiber(checker);
  check_traverse(checker);
  check_wind(checker);
  check_takeup(checker);
  check_dials(checker);
  Issues issues = checker.take_issues();
  if (!has_error(issues) && unread.empty()) {
    check_size(checker);
    const Issues size = checker.take_issues();
    issues.insert(issues.end(), size.begin(), size.end());
  }
  return issues;
}

Result<Plan> check(const PlanDraft& draft) {
  Issues issues = issues_of(draft, {});
  if (has_error(issues)) return issues;
  Dialling dialling = dial(draft);
  // Rounded, a value can leave what is sound: stops cross, a pitch becomes none.
  if (!same_plan(dialling.draft, draft)) {
    issues = told_of_dials(issues_of(dialling.draft, {}), dialling);
    if (has_error(issues)) return issues;
  }
  return {Plan(draft, std::move(dialling.draft), std::move(dialling.settings)), std::move(issues)};
}

}  // namespace laywright
