// Asks for a file to open, or for a name to save under.
#pragma once

#include "ui/panel_state.h"

namespace laywright {

enum class FileUse { open_plan, save_plan, save_sheet, save_page };

void file_dialog(const Workbench& bench, FileUse use, PanelState& state, Commands& out);

}  // namespace laywright
