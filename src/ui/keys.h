// From keys to what they do: commands by the table of commands, and the way about the window itself.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "ui/panel_state.h"

namespace laywright {

// What the help sheet says of keys that are no commands of the workbench.
struct KeyHelp {
  std::string_view group, name, keys, help;
};
[[nodiscard]] const std::vector<KeyHelp>& key_help();

// What has come to the window since the last frame.
struct WindowInput {
  const std::vector<std::string>& keys;  // "Ctrl+Shift+S"
  const std::vector<std::string>& dropped_files;
  bool close = false;
};
// Between frames. Keys that a field or a panel takes are left to it.
void take_input(const WindowInput& input, const Workbench& bench, PanelState& state, Commands& out);

// Right before Dear ImGui's new frame: whether its keys are on, and what Enter does.
void prepare_keys(PanelState& state);

}  // namespace laywright
