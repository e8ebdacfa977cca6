// The commands that a person can give by key or from a menu, with what the help sheet says of them. Menus, keys, the
// list of keys and boxes in panels are drawn from these rows: a new command is a row, and a function that does it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "session/command.h"

namespace laywright {

enum class Also {
  nothing,
  while_typing,  // its keys hold while something is typed into a field, too
  in_view_tab,   // what can be on or off: it has a box among what the tab View shows
};

struct CommandRow {
  std::string_view group;  // the menu: "File"
  std::string_view name;   // "Open..."
  std::string_view keys;   // "Ctrl+O"; empty: by menu alone. Parts: Ctrl, Shift, Alt, and a key by its name
  std::string_view help;   // one line
  Command command;
  Also also = Also::nothing;
};

// In the order of the menus. No two have the same keys, or commands of the same name.
[[nodiscard]] const std::vector<CommandRow>& command_rows();

// The menus, from left to right.
[[nodiscard]] const std::vector<std::string_view>& command_groups();

// The row whose command has this name; null where none has.
[[nodiscard]] const CommandRow* row_of(const Command& command);
// The row with these keys; null where none has, or there are none.
[[nodiscard]] const CommandRow* row_of_keys(std::string_view keys);

// "Wind to here (T)": words, and the keys of the command where it has some; before a full stop at the end.
[[nodiscard]] std::string with_keys(std::string_view words, const Command& command);

// The rows as they stand beside what they do, menu by menu.
using CommandRows = std::vector<CommandRow>;
[[nodiscard]] CommandRows file_rows();
[[nodiscard]] CommandRows edit_rows();
[[nodiscard]] CommandRows build_rows();
[[nodiscard]] CommandRows scrub_rows();
[[nodiscard]] CommandRows pick_rows();
[[nodiscard]] CommandRows view_rows();
[[nodiscard]] CommandRows camera_rows();
[[nodiscard]] CommandRows compare_rows();
[[nodiscard]] CommandRows lesson_rows();
[[nodiscard]] CommandRows help_rows();

}  // namespace laywright
