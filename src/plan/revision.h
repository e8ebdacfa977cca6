// Which plan this is, in eight letters and digits: what is printed on a sheet and found again.
#pragma once

#include <string>

#include "plan/lay_plan.h"

namespace laywright {

// "3F9A-0C12", the same on every machine: changes with any value that a wind depends on, not with title, notes, comments or
// the unit in which a value is written. Two plans of a shop share one by chance once in four thousand million pairs. Not for security.
[[nodiscard]] std::string revision_of(const PlanDraft& draft);

}  // namespace laywright
