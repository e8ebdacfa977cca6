// laywright order: lengths over spools, and a verdict for each.
#pragma once

#include "app/command_line.h"
#include "plan/named_entry.h"

namespace laywright {

void add_order_command(CommandLine program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
