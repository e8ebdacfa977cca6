// laywright capacity: how much fiber fits onto the spool of a plan.
#pragma once

#include "app/command_line.h"
#include "plan/named_entry.h"

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`. Plans may name these entries.
void add_capacity_command(CommandLine program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
