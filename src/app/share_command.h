// laywright share: lays a plan and writes it as a page that opens in any browser.
#pragma once

#include <CLI/CLI.hpp>

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_share_command(CLI::App& program, int& exit_code);

}  // namespace laywright
