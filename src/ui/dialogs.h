// What the window asks: files, what to do with unsaved work, what to compare with; and the sheet of keys.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

void draw_dialogs(const Workbench& bench, PanelState& state, Commands& out);

// Each of these is one of them, while it is asked.

// A plan begun anew: what is wound on what, the settings that are proposed for it.
void new_plan_dialog(const Workbench& bench, PanelState& state, Commands& out);

// An order over spools: what is wrong with it, or which spool takes what, with a verdict for each; the way to write it.
void order_dialog(const Workbench& bench, PanelState& state, Commands& out);

// Better settings: what the search may turn, how far it is, and what it has found.
void better_dialog(const Workbench& bench, PanelState& state, Commands& out);

// The share page: what it is, the way to save it, and what becomes of that.
void page_dialog(const Workbench& bench, PanelState& state, Commands& out);

// The set-up sheet as it will print, and the way to save it.
void sheet_dialog(const Workbench& bench, PanelState& state, Commands& out);

// What was wound and measured: the list, a spool's page, this spool to be kept, trends.
void records_dialog(const Workbench& bench, PanelState& state, Commands& out);

// A file to open, or a name to save under.
enum class FileUse {
  open_plan,
  save_plan,
  save_sheet,
  save_page,
  open_readings,
  save_readings,
  open_order,
  write_order  // into a folder
};

void file_dialog(const Workbench& bench, FileUse use, PanelState& state, Commands& out);

}  // namespace laywright
