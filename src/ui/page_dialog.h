// The share page: what it is, the way to save it, and what becomes of that.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void page_dialog(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
