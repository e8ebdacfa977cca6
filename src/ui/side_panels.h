// The panels beside the picture, but for the plan.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// What is shown of the build: layers, cuts, colouring.
void view_panel(const Workbench& bench, PanelState& state, Commands& out);
// What is wrong with the build: a click flies there.
void findings_panel(const Workbench& bench, PanelState& state, Commands& out);
// The turn that was picked, and the way to its neighbours.
void turn_panel(const Workbench& bench, PanelState& state, Commands& out);
// What the machine does where the scrubber is, and what it cannot do.
void machine_panel(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
