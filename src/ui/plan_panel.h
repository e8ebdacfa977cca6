// The plan as a form: every field with its unit and range, what it does, and what is wrong with it.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void plan_panel(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
