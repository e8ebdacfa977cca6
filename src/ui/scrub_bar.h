// The scrubber: the whole wind as a bar, with play, speed and steps.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void scrub_bar(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
