// `laywright open [PLAN]`: the window.
#pragma once

#include <memory>

#include "app/command_line.h"
#include "store/catalogues.h"

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_open_command(CommandLine program, std::shared_ptr<const Catalogues> entries, int& exit_code);

}  // namespace laywright
