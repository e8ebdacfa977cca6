// Writing a file so that it is either the old one or the new one, never half of either.
#pragma once

#include <filesystem>
#include <string_view>

#include "base/issue.h"

namespace laywright {

// Writes the bytes to a new file beside `path`, brings them to the disk, and renames it over `path`. An existing
// file keeps its permissions; a link stays a link and the file that it leads to is replaced. Something that is
// not a plain file (a pipe, /dev/stdout) is written to as it is.
//
// No issue: written. Otherwise one error, and what stood at `path` before stands there still.
[[nodiscard]] Issues write_file_atomically(const std::filesystem::path& path, std::string_view bytes);

}  // namespace laywright
