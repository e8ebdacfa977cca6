// laywright pattern: how the double strokes of a crossed wind lie beside one another, and settings without ribbons.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_pattern_command(CLI::App& program, int& exit_code);

}  // namespace laywright
