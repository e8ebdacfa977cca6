// Plans that stand alone: what they name of catalogues, written into them.
#pragma once

#include <string>
#include <string_view>

#include "plan/lay_plan.h"
#include "plan/plan_text.h"

namespace laywright {

// The text with the values of the draft's entries at all keys that it does not have, and a comment in place of each name. All
// else stays as it is. Reads back as the same plan, without entries. Precondition: the draft was read from the text.
[[nodiscard]] std::string flattened(std::string_view text, const PlanDraft& draft);

// The same of one entry.
void write_in(PlanText& text, const NamedEntry& entry);

// The draft as it is read from that.
[[nodiscard]] PlanDraft without_entries(PlanDraft draft);

}  // namespace laywright
