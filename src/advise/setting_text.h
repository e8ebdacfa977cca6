// Keys and values of a plan as they are written on a command line: "traverse.pitch=0.25mm:0.28mm".
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "plan/lay_plan.h"

namespace laywright {

// A value of that key as a plan would have it, but for quotes: "0.26 mm", "4", "held", "dwell". Errors: no such key,
// or no such value; both say what would do.
[[nodiscard]] Result<double> read_setting(const PlanDraft& draft, std::string_view path, std::string_view text);

// Issue about something on the command line.
[[nodiscard]] Issue option_issue(std::string_view key, std::string_view value, std::string what,
                                 std::string allowed = "");

// A search, a study that was stopped on the way.
[[nodiscard]] Issue stopped();

}  // namespace laywright
