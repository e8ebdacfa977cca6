// What a plan that names an entry of a catalogue gets from it.
#pragma once

#include <string>

#include "plan/named_entry.h"
#include "plan/reading.h"

namespace laywright {

// Looks the entry up and gives the draft its values wherever the plan, at `line`, has no key of its own; keys that could not
// be read stay unread. Null `entries`: no catalogue is at hand. Issues without a file are about the name; then what
// the entry might have given is not missed.
[[nodiscard]] Issues take_over(DraftReading& reading, EntryKind kind, const std::string& name, int line,
                               const EntrySource* entries);

// Of the draft's entries that might have had this key: "; the entry ... does not tell it". Empty where there are none.
[[nodiscard]] std::string silent_entries(const PlanDraft& draft, const std::string& path);

}  // namespace laywright
