#include "base/leftover.h"

#include <cerrno>
#include <string>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>

#include "base/hash.h"

namespace laywright {

namespace fs = std::filesystem;

Hold take_hold(const Descriptor& file, const fs::path& path) {
  if (::flock(file.get(), LOCK_EX | LOCK_NB) != 0) return errno == EWOULDBLOCK ? Hold::of_others : Hold::unknown;
  struct stat open {
  }, there{};
  const bool same = ::fstat(file.get(), &open) == 0 && ::lstat(path.c_str(), &there) == 0 &&
                    open.st_dev == there.st_dev && open.st_ino == there.st_ino;
  return same ? Hold::ours : Hold::of_others;
}

void remove_left_file(const fs::path& path) {
  struct stat there {};
  if (::lstat(path.c_str(), &there) != 0 || !S_ISREG(there.st_mode)) return;
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
  if (file.ok() && take_hold(file, path) == Hold::ours) ::unlink(path.c_str());
}

HiddenFile make_hidden_file(const fs::path& target) {
  Hash name;
  const std::string bytes = target.filename().string();
  name.add(bytes.data(), bytes.size());
  // More than one only where several programs write the same file at once.
  constexpr int most = 1000;
  for (int i = 0; i < most; ++i) {
    fs::path path = target.parent_path() / fmt::format("{}{:016x}-{}.tmp", hidden_prefix, name.value(), i);
    remove_left_file(path);
    Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
    if (!file.ok() && errno == EEXIST) continue;
    // Before it was locked, somebody may have taken it for a leftover.
    if (file.ok() && take_hold(file, path) == Hold::of_others) continue;
    return {std::move(file), std::move(path)};
  }
  errno = EEXIST;
  return {};
}

}  // namespace laywright
