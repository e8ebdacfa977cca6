// Asks for a file to open, or for a name to save under.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void file_dialog(const Workbench& bench, bool saving, PanelState& state, Commands& out);

}  // namespace laywright
