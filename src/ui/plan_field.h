// A field of the plan that is typed into: the arrow keys and the buttons at its end step its value; what is typed
// counts from Enter, Tab, or leaving the field on, or after a pause where it can mean nothing else.
#pragma once

#include <optional>

#include "ui/panel_state.h"

namespace laywright {

// `fiber_mm`: the fiber's diameter, for the size of steps; 0 where it is not known.
void text_field(const Desk& desk, const FieldRow& row, double fiber_mm, PanelState& state, Commands& out);

// At the end of the item drawn last, which is that field.
void step_buttons(const Desk& desk, const FieldRow& row, double fiber_mm, PanelState& state, Commands& out);
[[nodiscard]] float step_buttons_width();

// Gives what is typed but not in the plan yet, before a command that needs the plan as it stands.
void send_typed(const Workbench& bench, PanelState& state, Commands& out);

// At the end of a frame: a field that is no longer drawn is left.
void leave_lost_field(const Workbench& bench, PanelState& state, Commands& out);

// After how many seconds a frame is needed for what is typed or held; none: not by itself.
[[nodiscard]] std::optional<double> seconds_to_typed(const PanelState& state);

}  // namespace laywright
