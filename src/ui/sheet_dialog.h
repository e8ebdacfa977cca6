// The set-up sheet as it will print, and the way to save it.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void sheet_dialog(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
