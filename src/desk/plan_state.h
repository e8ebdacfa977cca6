// What a person edits: the numbers of a plan, and what could not be read of it. A value; edits give a new one.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "plan/fields.h"
#include "plan/lay_plan.h"
#include "plan/plan_values.h"

namespace laywright {

struct PlanState {
  PlanDraft draft;
  std::set<std::string> unread;  // key paths whose values are missing, for one of the issues of reading
  Issues reading;                // what the text, or what was typed, has that is no value: keys, spellings
};

// True if saving both would give the same file.
[[nodiscard]] bool same_state(const PlanState& a, const PlanState& b);

// Whether two drafts give the same build and findings: what they are called does not matter.
[[nodiscard]] bool same_wind(const PlanDraft& a, PlanDraft b);

// The text of a plan. Errors where it is not even the shape of one (not TOML, another format); values that cannot
// be read stay behind as issues in the state. Entries of catalogues that the plan names are looked up in `entries`.
[[nodiscard]] Result<PlanState> state_from_text(std::string_view text, std::string file_name,
                                                const EntrySource* entries = nullptr);

// The state with this value; without one the field falls back to its catalogue entry's, or its default, or, when it is required, is told to
// be missing. No such field: the state as it was. A quantity keeps the unit that it was written in, unless `unit`
// (of its dimension) is given.
[[nodiscard]] PlanState with_value(PlanState state, std::string_view path, std::optional<double> value,
                                   const Unit* unit = nullptr);

// The state with what a person typed: a number alone counts in `unit`, or else in the field's unit. What cannot be
// read leaves the value as it is, and an issue at the path.
[[nodiscard]] PlanState with_text(PlanState state, std::string_view path, const std::string& text,
                                  const Unit* unit = nullptr);

// All issues of the state, of reading and of the plan's rules, in the order of their lines.
[[nodiscard]] Issues issues_in(const PlanState& state);

}  // namespace laywright
