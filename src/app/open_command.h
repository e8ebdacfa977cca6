// `laywright open [PLAN]`: the window.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

void add_open_command(CLI::App& program, int& exit_code);

}  // namespace laywright
