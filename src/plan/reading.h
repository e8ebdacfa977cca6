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
  bool readable = false;         // false: it does not say that it is a lay plan of a format that is known
  bool has_values = false;       // false: not even the shape of a plan; the draft is empty
};

// Null `entries`: no catalogue is at hand.
[[nodiscard]] DraftReading read_draft(std::string_view text, std::string file_name, const EntrySource* entries);

}  // namespace laywright
