// A plan as its machine can be set: each value that has a dial, rounded to what that can be set to.
#pragma once

#include <vector>

#include "plan/lay_plan.h"

namespace laywright {

struct Dialling {
  PlanDraft draft;  // its values are what is dialled; all else, with origins and dials, stays
  std::vector<DialledSetting> settings;
};

// Values beyond a dial's reach, or beyond what was measured on it, stay as they are; check() refuses the first and warns of
// the second. Dialling what was dialled changes nothing.
[[nodiscard]] Dialling dial(const PlanDraft& draft);

// The draft alone: for who proposes settings.
[[nodiscard]] PlanDraft as_dialled(const PlanDraft& draft);

// For who asks what happens off the dial's steps: real spools, errors, tolerances.
[[nodiscard]] PlanDraft without_dials(PlanDraft draft);

// By how much the value of a key ("traverse.pitch") changes there from one step of its dial to the next; none without a dial,
// or where that has no steps.
[[nodiscard]] std::optional<double> dial_step(const PlanDraft& draft, std::string_view path);

// The pull on a tension's dial over the plan's on the empty barrel, at the centre line of its first turn: other than 1 where the
// dial is a clutch's, measured on another diameter.
[[nodiscard]] double pull_on_dial(const PlanDraft& draft, const Dial& dial);

// The setting of that path; null where it is not dialled.
[[nodiscard]] const DialledSetting* dialled_at(const Plan& plan, std::string_view path);

// "7.5 div"; "not measured".
[[nodiscard]] std::string reading_words(const DialledSetting& setting);

// Issues of the dialled draft: where the dial moved the value, they say so.
[[nodiscard]] Issues told_of_dials(Issues issues, const Dialling& dialling);

}  // namespace laywright
