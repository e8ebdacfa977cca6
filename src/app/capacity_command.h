// laywright capacity: how much fiber fits onto the spool of a plan.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_capacity_command(CLI::App& program, int& exit_code);

}  // namespace laywright
