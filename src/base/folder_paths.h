// What stands in a folder.
#pragma once

#include <filesystem>
#include <system_error>
#include <vector>

namespace laywright {

// The paths of all that stands in a folder, by name. Where it cannot be read, or not to its end, `error` says why, and
// what was seen until then is returned. The loop that the standard library offers throws there.
[[nodiscard]] std::vector<std::filesystem::path> paths_in(const std::filesystem::path& folder,
                                                          std::error_code& error);

}  // namespace laywright
