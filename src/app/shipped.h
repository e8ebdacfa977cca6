// What comes with the program.
#pragma once

#include <filesystem>

namespace laywright {

// The folder of the samples, which has the lessons and the catalogues in it: beside the program, or in a folder above it. Empty
// where there is none.
[[nodiscard]] std::filesystem::path shipped_folder();

}  // namespace laywright
