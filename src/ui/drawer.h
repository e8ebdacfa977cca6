// The drawer below the picture: section, map, layers, curves, pattern, follow, study, comparison.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// How high it will be, of what is available.
[[nodiscard]] float drawer_height(const Workbench& bench, float available, const PanelState& state);
void draw_drawer(const Workbench& bench, const Shown& shown, PanelState& state, Commands& out);

}  // namespace laywright
