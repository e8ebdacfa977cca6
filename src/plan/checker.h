// The rules of a lay plan, and the notebook in which they write what they find.
#pragma once

#include <initializer_list>
#include <set>
#include <string>

#include "plan/fields.h"
#include "plan/lay_plan.h"

namespace laywright {

class Checker {
 public:
  // Values at `unread` paths are missing from the draft and have their issue already.
  Checker(const PlanDraft& draft, std::set<std::string> unread) : draft_(draft), unsound_(std::move(unread)) {}

  [[nodiscard]] const PlanDraft& draft() const { return draft_; }

  // True while none of these values has an error: what rests on several values is checked only then.
  [[nodiscard]] bool sound(std::initializer_list<const char*> paths) const;
  [[nodiscard]] bool sound(const std::string& path) const { return unsound_.count(path) == 0; }

  // At a value, or at a table. An error makes the value unsound.
  void error(const std::string& path, std::string what, std::string allowed = "");
  void warn(const std::string& path, std::string what);
  void out_of_range(const std::string& path, const FieldInfo& field);

  // A value as the person wrote it, or would: "150 mm". Precondition: path of a field that has a value.
  [[nodiscard]] std::string shown(const std::string& path) const;
  // Another amount of the same kind, in the unit in which that value was written.
  [[nodiscard]] std::string in_unit_of(const std::string& path, double value) const;

  // In the order of their lines.
  [[nodiscard]] Issues take_issues();

 private:
  void add(Severity severity, const std::string& path, std::string what, std::string allowed);

  const PlanDraft& draft_;
  std::set<std::string> unsound_;
  Issues issues_;
};

// Each: the draft's values hold these rules, or the checker knows why not.
void check_ranges(Checker& checker);
void check_spool_and_fiber(Checker& checker);
void check_traverse(Checker& checker);
void check_wind(Checker& checker);
void check_takeup(Checker& checker);
void check_dials(Checker& checker);
void check_size(Checker& checker);  // only where all others found no error

// All of them.
[[nodiscard]] Issues issues_of(const PlanDraft& draft, const std::set<std::string>& unread);

}  // namespace laywright
