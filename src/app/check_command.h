// laywright check: reads and checks plans, and prints what is wrong with them.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_check_command(CLI::App& program, int& exit_code);

}  // namespace laywright
