// The verdict on the wind in hand, above its picture.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// With a button that judges it over several draws, where there is room. Nothing in a lesson, which asks that itself.
void verdict_bar(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
