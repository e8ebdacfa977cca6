// laywright picture: draws a wind into a PNG file, without a window.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_picture_command(CLI::App& program, int& exit_code);

}  // namespace laywright
