// The values of a plan by their key paths: "traverse.pitch", "wind.step[2].left_stop".
#pragma once

#include <optional>
#include <string_view>

#include "plan/fields.h"
#include "plan/lay_plan.h"

namespace laywright {

// A field of a plan or of one of its steps. Null where there is none.
[[nodiscard]] const FieldInfo* field_at(const PlanDraft& draft, std::string_view path);

// None where the draft has no value, or no such field.
[[nodiscard]] std::optional<double> value_at(const PlanDraft& draft, std::string_view path);

// Origins stay as they are. Precondition of both: there is such a field.
void set_value(PlanDraft& draft, std::string_view path, double value);
// The field falls back to what the plan's entry of a catalogue says, or else to its default.
void clear_value(PlanDraft& draft, std::string_view path);

}  // namespace laywright
