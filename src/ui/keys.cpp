#include "ui/keys.h"

#include <algorithm>

#include "workbench/command_table.h"

namespace laywright {

std::optional<Command> command_of_keys(std::string_view keys) {
  const std::vector<CommandInfo>& table = command_table();
  const auto found = std::find_if(table.begin(), table.end(), [&](const CommandInfo& c) { return c.keys == keys; });
  if (keys.empty() || found == table.end()) return std::nullopt;
  return found->command;
}

}  // namespace laywright
