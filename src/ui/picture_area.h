// The place of the 3D picture: the mouse there turns, moves and zooms the spool, and picks turns. The picture itself
// is drawn by whoever has the graphics card, beneath what is drawn here.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// `box` in the window; `active` false for the other side of a comparison, which the mouse leaves alone.
void picture_area(const Workbench& bench, const Box2& box, bool active, PanelState& state, Commands& out);

}  // namespace laywright
