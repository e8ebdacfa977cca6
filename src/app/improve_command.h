// laywright improve: better settings for a plan, and what they cost.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_improve_command(CLI::App& program, int& exit_code);

}  // namespace laywright
