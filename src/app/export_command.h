// laywright export: a wind for other programs: solid model, lines, table, drawings, moving pictures.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_export_command(CLI::App& program, int& exit_code);

}  // namespace laywright
