// laywright study: a plan laid many times, over a grid or within tolerances.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_study_command(CLI::App& program, int& exit_code);

}  // namespace laywright
