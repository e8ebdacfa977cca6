// laywright pattern: how the double strokes of a crossed wind lie beside one another, and settings without ribbons.
#pragma once

#include "app/command_line.h"
#include "plan/named_entry.h"

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`. Plans may name these entries.
void add_pattern_command(CommandLine program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
