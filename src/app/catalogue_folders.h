// Which catalogues the program looks names up in.
#pragma once

#include <memory>

#include <CLI/CLI.hpp>

#include "store/catalogues.h"

namespace laywright {

// The person's own folder ($XDG_CONFIG_HOME/laywright/catalogue), then the one that comes with the program; and --catalogue
// puts another one before them.
[[nodiscard]] std::shared_ptr<const Catalogues> add_catalogues(CLI::App& program);

}  // namespace laywright
