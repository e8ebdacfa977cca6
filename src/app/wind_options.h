// How a plan is laid, as options of a command line.
#pragma once

#include "app/command_line.h"
#include "lay/lay.h"

namespace laywright {

// --seed and --fidelity.
void add_wind_options(CommandLine command, LaySettings& settings, const char* group = "Options");

}  // namespace laywright
