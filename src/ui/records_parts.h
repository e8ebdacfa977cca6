// The tabs of the records' dialog. Inside of it only.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void records_list(const Workbench& bench, PanelState& state, Commands& out);
void record_page(const Workbench& bench, PanelState& state, Commands& out);
void record_fit_part(const Workbench& bench, PanelState& state, Commands& out);
void keep_spool_page(const Workbench& bench, PanelState& state, Commands& out);
void record_trends_page(const Workbench& bench, PanelState& state, Commands& out);

// Decision, who, note and readings, to be said of a spool. `place`: its name for whoever drives the window.
void spool_form(const std::vector<Checkpoint>& checkpoints, const Counter* counter, const std::string& place,
                SaidOfSpool& said, PanelState& state);
// A button that takes what was typed into the tab Follow over; nothing where nothing was.
void take_over_button(const Workbench& bench, SaidOfSpool& said, const std::string& place, PanelState& state);

// A label, and a field behind it in a table of two columns; `hint`: what holds while it is empty.
void form_row(const char* label, const std::string& hint, std::string& text, const std::string& place,
              PanelState& state);

// What was written last, or why it was not.
void kept_line(const Workbench& bench, PanelState& state);

}  // namespace laywright
