// The table of an order: of each spool what it takes, its figures and its verdict, and the way to its plan.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// As high as there is room, but for what is kept free below. Precondition: the order is laid, quickly or in full, and
// everything was placed.
void spools_table(const Workbench& bench, float below, PanelState& state, Commands& out);

}  // namespace laywright
