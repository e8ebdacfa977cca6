// The program in a folder of its own, with trouble on purpose: what every command must leave behind, whatever happens.
#pragma once

#include <algorithm>
#include <iterator>
#include <map>
#include <string>

#include <fmt/format.h>
#include <unistd.h>

#include "app/program.h"

namespace laywright {

// Runs a command as somebody whom permissions bind: the superuser may write anywhere.
inline std::string bound_by_permissions(const std::string& command) {
  if (::geteuid() != 0) return command;
  return fmt::format("setpriv --reuid=65534 --regid=65534 --clear-groups -- {}", command);
}

// Names and bytes of all files in a folder and below.
using Files = std::map<std::string, std::string>;

inline Files files_in(const std::filesystem::path& folder) {
  Files files;
  if (!std::filesystem::exists(folder)) return files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) {
      files[std::filesystem::relative(entry.path(), folder).string()] = content(entry.path());
    }
  }
  return files;
}

// Without what a killed program could not clear away: hidden, and of a name that no person gives.
inline Files without_leavings(Files files) {
  for (auto file = files.begin(); file != files.end();) {
    file = file->first.starts_with(".laywright-") ? files.erase(file) : std::next(file);
  }
  return files;
}

}  // namespace laywright
