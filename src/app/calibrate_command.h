// laywright calibrate: a machine's dial from readings.
#pragma once

#include "app/command_line.h"

namespace laywright {

// Adds the command; when it is chosen, it runs and puts its exit code into `exit_code`.
void add_calibrate_command(CommandLine program, int& exit_code);

}  // namespace laywright
