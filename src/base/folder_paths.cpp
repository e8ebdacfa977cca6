#include "base/folder_paths.h"

#include <algorithm>

namespace laywright {

namespace fs = std::filesystem;

std::vector<fs::path> paths_in(const fs::path& folder, std::error_code& error) {
  std::vector<fs::path> paths;
  for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    paths.push_back(at->path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

}  // namespace laywright
