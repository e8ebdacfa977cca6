// Better settings: what the search may turn, how far it is, and what it has found.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void better_dialog(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
