// From keys to commands, by the table of commands.
#pragma once

#include <optional>
#include <string_view>

#include "workbench/command.h"

namespace laywright {

// "Ctrl+Shift+S", as the table spells it.
[[nodiscard]] std::optional<Command> command_of_keys(std::string_view keys);

}  // namespace laywright
