// Where a person's own data stands: what the program keeps for them, not about them.
#pragma once

#include <filesystem>

namespace laywright {

// $XDG_DATA_HOME/laywright, or ~/.local/share/laywright, as folders.h has the others; empty where there is no home.
[[nodiscard]] std::filesystem::path data_folder();

}  // namespace laywright
