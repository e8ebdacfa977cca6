// A colour of the plan that is none of the words: a field of the form has a patch of its colour, and there it is mixed.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

[[nodiscard]] float colour_patch_width();

// Beside the item drawn last, which is that field. All that is mixed until the picker closes is one step back.
void colour_patch(const Workbench& bench, const FieldRow& row, PanelState& state, Commands& out);

}  // namespace laywright
