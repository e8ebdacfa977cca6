// laywright order: lengths over spools, and a verdict for each.
#pragma once

#include <CLI/CLI.hpp>

#include "plan/named_entry.h"

namespace laywright {

void add_order_command(CLI::App& program, const EntrySource& entries, int& exit_code);

}  // namespace laywright
