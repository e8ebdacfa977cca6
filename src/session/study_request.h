// A study as a person asks for it in the window: the keys that can be varied, ranges to begin with, and what was typed.
#pragma once

#include <optional>
#include <vector>

#include "advise/study.h"
#include "desk/field_rows.h"
#include "session/advice_request.h"

namespace laywright {

// Places in `rows` of the fields that a build depends on, have a number, and count for something in this plan.
[[nodiscard]] std::vector<std::size_t> study_keys(const std::vector<FieldRow>& rows);

// "Traverse: pitch".
[[nodiscard]] std::string key_words(const FieldRow& row);

// A range about where the plan stands: of pitch, stops and reversal where a search for better settings would look; a
// fifth less and more of others; up to what would show in a fiber of this diameter, where the plan has nothing.
// Precondition: a sound draft, and a row of its own.
[[nodiscard]] StudyAxisRequest suggested_axis(const PlanDraft& draft, const FieldRow& row);

// Errors: a key that is none of those, what cannot be read as its value, and those of check_study().
[[nodiscard]] Result<StudySpec> spec_of(const StudyRequest& request, const PlanDraft& draft,
                                        const std::vector<FieldRow>& rows, std::uint64_t seed);

}  // namespace laywright
