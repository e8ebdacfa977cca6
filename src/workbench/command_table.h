// The commands that a person can give by key or from a menu, with what the help sheet says of them.
#pragma once

#include <string_view>
#include <vector>

#include "workbench/command.h"

namespace laywright {

struct CommandInfo {
  std::string_view group;  // "File", "Edit", "Build", "Scrub", "Pick", "View", "Compare", "Learn", "Help"
  std::string_view name;   // "Open..."
  std::string_view keys;   // "Ctrl+O"; empty: by menu alone. Parts: Ctrl, Shift, Alt, and a key by its name
  std::string_view help;   // one line
  Command command;
};

// In the order of the menus. No two have the same keys.
[[nodiscard]] const std::vector<CommandInfo>& command_table();

}  // namespace laywright
