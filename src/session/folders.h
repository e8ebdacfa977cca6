// Where the program keeps what it remembers.
#pragma once

#include <filesystem>

namespace laywright {

struct Folders {
  std::filesystem::path config;  // settings: $XDG_CONFIG_HOME/laywright, or ~/.config/laywright
  std::filesystem::path state;   // recovery copies: $XDG_STATE_HOME/laywright, or ~/.local/state/laywright

  // As the XDG Base Directory Specification 0.8 says: a relative path in these variables counts as not set. Empty
  // paths where there is no home either: then nothing is remembered.
  [[nodiscard]] static Folders of_person();
};

// Makes a folder, for its owner alone, with those above it. False when it cannot be.
[[nodiscard]] bool make_private_folder(const std::filesystem::path& folder);

}  // namespace laywright
