// Reading an input.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace laywright {

// The bytes of a plain file, or of the one that a link leads to; `what` says in the issues what is due: "a lay plan".
// Errors: there is none; it is a folder, a pipe or a device, which might never end; it cannot be read; it is larger
// than `most_bytes`. Nothing is waited for, and no more than that is read.
[[nodiscard]] Result<std::string> read_file(const std::filesystem::path& path, std::string_view what,
                                            std::size_t most_bytes);

}  // namespace laywright
