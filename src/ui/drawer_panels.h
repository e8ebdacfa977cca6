// The panels of the drawer.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// The axial section as a flat drawing at any angle: true circles; wheel zooms, drag moves, hover tells the turn, click
// picks it.
void section_panel(const Workbench& bench, PanelState& state, Commands& out);
// The surface of the layers shown, unrolled: x to the right, the way around upward.
void map_panel(const Workbench& bench, const Shown& shown, PanelState& state, Commands& out);
void layers_panel(const Workbench& bench, PanelState& state, Commands& out);
// What the machine does over the length, and the build as curves; a click or drag over the length moves the scrubber.
void curves_panel(const Workbench& bench, PanelState& state, Commands& out);
// What comes of other settings, over one or two of them: a curve or a map; a click sets the plan so.
void study_panel(const Workbench& bench, PanelState& state, Commands& out);
// How the double strokes of a crossed wind lie, ribbons to come, and settings without: the command laywright pattern, of the plan
// as it is edited.
void pattern_panel(const Workbench& bench, PanelState& state, Commands& out);
void comparison_panel(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
