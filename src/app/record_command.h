// laywright record: what was wound and measured, kept.
#pragma once

#include <CLI/CLI.hpp>

#include "plan/named_entry.h"

namespace laywright {

void add_record_command(CLI::App& program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
