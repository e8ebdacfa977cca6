// laywright record: what was wound and measured, kept.
#pragma once

#include "app/command_line.h"
#include "plan/named_entry.h"

namespace laywright {

void add_record_command(CommandLine program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
