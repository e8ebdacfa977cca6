// Commands of an order over spools.
#pragma once

#include <cstddef>
#include <string>

#include "session/command.h"

namespace laywright::cmd {

// What comes of the order that is open; where none is, which file is to be opened.
Command show_order();
// Checks it, and lays it in the background; Workbench::order() tells what comes of it.
Command open_order(const std::string& file);
// Reads its file and its plans once more, and lays it anew.
Command lay_order_again();
Command stop_laying_order();
// Plans, set-up sheets, and the batch as a table and on paper into a folder, in the background: all files or none.
Command write_order(const std::string& folder);
Command stop_writing_order();
// The plan of the spool at that place of the batch: its file, once it was written, else a copy without one.
Command open_spool_plan(std::size_t spool);

}  // namespace laywright::cmd
