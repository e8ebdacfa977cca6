// A wind that is followed, and the places at which to read it, as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "follow/checklist.h"
#include "follow/follow.h"

namespace laywright {

[[nodiscard]] std::string follow_text(const Plan& plan, const AsWound& wound, const Followed& followed);

// One document, format "lay-follow 1". Lengths mm.
[[nodiscard]] std::string follow_json(const Plan& plan, const AsWound& wound, const Followed& followed);

// For the machine: at each checkpoint what to read, what it should be, and how far off it may be.
[[nodiscard]] std::string checklist_text(const Plan& plan, const std::vector<ChecklistRow>& rows);

// One document, format "lay-checklist 1". Lengths mm.
[[nodiscard]] std::string checklist_json(const Plan& plan, const std::vector<ChecklistRow>& rows);

}  // namespace laywright
