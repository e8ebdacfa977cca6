// Writing a file so that it is either the old one or the new one, never half of either.
#pragma once

#include <filesystem>
#include <functional>
#include <ostream>
#include <string_view>

#include "base/issue.h"

namespace laywright {

// Writes the bytes to a new file beside `path`, brings them to the disk, and renames it over `path`. An existing
// file keeps its permissions; a link stays a link, and the file that it leads to is replaced, or made. What a killed
// program left of the same file is cleared away. Something that is
// not a plain file (a pipe, /dev/stdout) is written to as it is; a pipe that nobody reads is an error.
//
// No issue: written. Otherwise one error, and what stood at `path` before stands there still.
[[nodiscard]] Issues write_file_atomically(const std::filesystem::path& path, std::string_view bytes);

// The same for what is too large to be held in memory: `write` puts the bytes, and returns false when it has given up
// (stopped by the person). Then nothing was changed, and there is no issue.
[[nodiscard]] Issues write_file_atomically(const std::filesystem::path& path,
                                           const std::function<bool(std::ostream&)>& write);

// Writes in a hidden place, where nobody looks: straight into the file, which is brought to the disk later. What failed
// or gave up leaves none.
[[nodiscard]] Issues write_file_here(const std::filesystem::path& path,
                                     const std::function<bool(std::ostream&)>& write);

// Brings the bytes of a file to the disk. No issue: they survive a power failure.
[[nodiscard]] Issues sync_file(const std::filesystem::path& path);

// So that new names in a folder survive a power failure, too. Not every file system can.
void sync_folder(const std::filesystem::path& folder);

}  // namespace laywright
