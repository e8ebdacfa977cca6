// laywright new: a plan to begin with, laid and judged before it is proposed.
#pragma once

#include "app/command_line.h"
#include "store/catalogues.h"

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_new_command(CommandLine program, const Catalogues& catalogues, int& exit_code);

}  // namespace laywright
