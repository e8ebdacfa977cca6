// Which catalogues the program looks names up in.
#pragma once

#include <memory>

#include "app/command_line.h"
#include "store/catalogues.h"

namespace laywright {

// The person's own folder ($XDG_CONFIG_HOME/laywright/catalogue), then the one that comes with the program; and --catalogue
// puts another one before them.
[[nodiscard]] std::shared_ptr<const Catalogues> add_catalogues(CommandLine program);

}  // namespace laywright
