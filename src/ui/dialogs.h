// What the window asks: files, what to do with unsaved work, what to compare with; and the sheet of keys.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void draw_dialogs(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
