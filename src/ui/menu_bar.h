// The menus, drawn from the rows of commands.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void menu_bar(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
