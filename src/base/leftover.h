// What a program that was killed leaves behind: hidden files and folders. Whoever works with one holds its lock, so that
// one without a holder is known to be left.
#pragma once

#include <filesystem>
#include <string_view>

#include "base/descriptor.h"

namespace laywright {

// How the names of all of them begin; no person gives such a name.
inline constexpr std::string_view hidden_prefix = ".laywright-";

enum class Hold {
  ours,       // nobody else has it
  of_others,  // somebody works with it, or it is no longer what stands there
  unknown,    // the file system has no locks: it may be anybody's
};

// Takes the lock of what stands at `path` and is open as `file`, without waiting. It is given up with the last descriptor of it.
[[nodiscard]] Hold take_hold(const Descriptor& file, const std::filesystem::path& path);

// Removes a hidden file that nobody holds. All others stay.
void remove_left_file(const std::filesystem::path& path);

// A new file for writing, locked, with a hidden name beside `target`. The name follows from the target's, so that a file that was left
// there gives way to the next one, and does not grow with it. Not ok, with errno, where there can be none.
struct HiddenFile {
  Descriptor file;
  std::filesystem::path path;
};
[[nodiscard]] HiddenFile make_hidden_file(const std::filesystem::path& target);

}  // namespace laywright
