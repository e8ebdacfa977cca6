#include "session/folders.h"

#include <cstdlib>
#include <system_error>

#include "session/data_folder.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

fs::path folder_of(const char* variable, const char* below_home) {
  const char* set = std::getenv(variable);
  if (set != nullptr && fs::path(set).is_absolute()) return fs::path(set) / "laywright";
  const char* home = std::getenv("HOME");
  if (home == nullptr || !fs::path(home).is_absolute()) return {};
  return fs::path(home) / below_home / "laywright";
}

}  // namespace

Folders Folders::of_person() {
  return {folder_of("XDG_CONFIG_HOME", ".config"), folder_of("XDG_STATE_HOME", ".local/state")};
}

fs::path data_folder() { return folder_of("XDG_DATA_HOME", ".local/share"); }

bool make_private_folder(const fs::path& folder) {
  if (folder.empty()) return false;
  std::error_code error;
  if (fs::create_directories(folder, error)) {
    fs::permissions(folder, fs::perms::owner_all, fs::perm_options::replace, error);
  }
  return fs::is_directory(folder, error);
}

}  // namespace laywright
