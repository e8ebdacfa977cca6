// How a plan is laid, as options of a command line.
#pragma once

#include <CLI/CLI.hpp>

#include "lay/lay.h"

namespace laywright {

// --seed and --fidelity.
void add_wind_options(CLI::App& command, LaySettings& settings, const char* group = "Options");

}  // namespace laywright
