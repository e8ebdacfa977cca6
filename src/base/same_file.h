// Whether two names lead to one file.
#pragma once

#include <filesystem>

namespace laywright {

// True if both are there and are the same file, by whatever spelling, symbolic or hard link.
[[nodiscard]] bool same_file(const std::filesystem::path& one, const std::filesystem::path& other);

}  // namespace laywright
