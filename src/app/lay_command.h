// laywright lay: lays a plan, prints the result, and writes the whole set of reports.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_lay_command(CLI::App& program, int& exit_code);

}  // namespace laywright
