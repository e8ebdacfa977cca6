// laywright payoff: unwinds the build of a plan and tells where it catches.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_payoff_command(CLI::App& program, int& exit_code);

}  // namespace laywright
