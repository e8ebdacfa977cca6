// What could be read of a plan's text, sound or not.
#pragma once

#include <set>
#include <string>
#include <string_view>

#include "plan/lay_plan.h"

namespace laywright {

struct DraftReading {
  PlanDraft draft;
  Issues issues;
  std::set<std::string> unread;  // key paths whose values the draft lacks for one of the issues
  bool readable = false;         // false: not even the shape of a plan; the draft is empty
};

[[nodiscard]] DraftReading read_draft(std::string_view text, std::string file_name);

}  // namespace laywright
