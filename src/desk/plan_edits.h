// Edits of a plan that are more than one value.
#pragma once

#include "desk/plan_state.h"
#include "desk/wound.h"

namespace laywright {

[[nodiscard]] PlanState with_title(PlanState state, std::string title);
[[nodiscard]] PlanState with_notes(PlanState state, std::string notes);
[[nodiscard]] PlanState with_order_text(PlanState state, const OrderField& field, std::string text);

// A step more, behind the last: ten layers later (from layer 10 on where there is none), with the pitch as before it.
[[nodiscard]] PlanState with_step_added(PlanState state);
// Precondition: index of a step.
[[nodiscard]] PlanState with_step_removed(PlanState state, std::size_t index);

[[nodiscard]] PlanState with_takeup(PlanState state, bool has_one);

enum class WindEnd { length, turns, diameter };
[[nodiscard]] const char* name_of(WindEnd end);  // the key: "length"

// The one that decides; by length where none or several are given.
[[nodiscard]] WindEnd wind_end_of(const PlanDraft& draft);

// The same wind, ended by another measure: what `wound` reached of it, or an estimate where nothing is laid yet
// (null).
[[nodiscard]] PlanState with_wind_end(PlanState state, WindEnd end, const Wound* wound);

// The state with every value, and every step, that the target has otherwise.
[[nodiscard]] PlanState with_values_of(PlanState state, const PlanDraft& target);

// The target with its new values as a person would set them: in nine digits of the unit that they are written in, so
// that computing leaves nothing behind their last place.
[[nodiscard]] PlanDraft neat(const PlanDraft& from, PlanDraft target);

// Without the keys and tables that are no part of a plan.
[[nodiscard]] PlanState without_unknown(PlanState state);
// What of the state would be lost by that.
[[nodiscard]] Issues unknown_in(const PlanState& state);

}  // namespace laywright
