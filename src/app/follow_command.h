// laywright follow: a wind while it is wound, by what was read on it so far.
#pragma once

#include "app/command_line.h"
#include "plan/named_entry.h"

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`. Plans may name these entries.
void add_follow_command(CommandLine program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
