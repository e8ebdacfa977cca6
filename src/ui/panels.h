// The parts of the window: each reads a workbench, draws itself, and puts the commands that the person gives into `out`.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

// The menus, drawn from the rows of commands.
void menu_bar(const Workbench& bench, PanelState& state, Commands& out);

// The verdict on the wind in hand, above its picture.
// With a button that judges it over several draws, where there is room. Nothing in a lesson, which asks that itself.
void verdict_bar(const Workbench& bench, PanelState& state, Commands& out);

// The place of the 3D picture: the mouse there turns, moves and zooms the spool, and picks turns. The picture itself
// is drawn by whoever has the graphics card, beneath what is drawn here.
// `box` in the window; `active` false for the other side of a comparison, which the mouse leaves alone.
void picture_area(const Workbench& bench, const Box2& box, bool active, PanelState& state, Commands& out);

// The scrubber: the whole wind as a bar, with play, speed and steps.
void scrub_bar(const Workbench& bench, PanelState& state, Commands& out);

// The plan as a form: every field with its unit and range, what it does, and what is wrong with it.
void plan_panel(const Workbench& bench, PanelState& state, Commands& out);

// --- beside the picture
// What is shown of the build: layers, cuts, colouring.
void view_panel(const Workbench& bench, PanelState& state, Commands& out);
// What is wrong with the build: a click flies there.
void findings_panel(const Workbench& bench, PanelState& state, Commands& out);
// The turn that was picked, and the way to its neighbours.
void turn_panel(const Workbench& bench, PanelState& state, Commands& out);
// What the machine does where the scrubber is, and what it cannot do.
void machine_panel(const Workbench& bench, PanelState& state, Commands& out);

// --- in the drawer
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
// The checklist of a wind: what is read at each checkpoint, typed beside what it should be; what is off, and what to change now.
void follow_panel(const Workbench& bench, PanelState& state, Commands& out);
void comparison_panel(const Workbench& bench, PanelState& state, Commands& out);

}  // namespace laywright
