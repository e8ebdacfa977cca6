#include "base/read_file.h"

#include <algorithm>
#include <cerrno>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>

#include "base/descriptor.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

std::string words_of(int error) { return std::generic_category().message(error); }

// Why it is no plain file; empty if it is one.
std::string why_no_file(mode_t mode, std::string_view what) {
  if (S_ISREG(mode)) return "";
  const char* kind = S_ISDIR(mode) ? "folder" : S_ISFIFO(mode) ? "pipe" : S_ISSOCK(mode) ? "socket" : "device";
  std::string why = fmt::format("is a {}; it must be a file, {}", kind, what);
  return S_ISDIR(mode) ? why : why + "; write into one what comes from there";
}

// At most so many bytes and one, which tells that there are more. Empty, with the error, where it cannot be read.
std::string bytes_of(int fd, std::size_t expected, std::size_t most, int& error) {
  std::string bytes;
  std::size_t filled = 0;
  // A file may say that it is empty and is not, or grow meanwhile.
  for (std::size_t room = std::min(expected, most) + 1;; room = std::min(2 * room + 4096, most + 1)) {
    bytes.resize(std::max(room, filled));
    while (filled < bytes.size()) {
      const ssize_t got = ::read(fd, bytes.data() + filled, bytes.size() - filled);
      if (got < 0 && errno == EINTR) continue;
      if (got < 0) return error = errno, "";
      if (got == 0) return bytes.resize(filled), bytes;
      filled += static_cast<std::size_t>(got);
    }
    if (filled > most) return bytes;
  }
}

}  // namespace

Result<std::string> read_file(const fs::path& path, std::string_view what, std::size_t most_bytes) {
  Issue issue;
  issue.file = path.string();
  const auto refused = [&](std::string why) {
    issue.what = std::move(why);
    return issue;
  };
  // Before it is opened: to open some devices does something.
  struct stat seen {};
  if (::stat(path.c_str(), &seen) != 0) {
    const int error = errno;
    if (error == ENOENT || error == ENOTDIR) return refused("there is no such file");
    return refused(fmt::format("cannot be opened: {}", words_of(error)));
  }
  if (std::string why = why_no_file(seen.st_mode, what); !why.empty()) return refused(std::move(why));
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC));
  if (!file.ok() || ::fstat(file.get(), &seen) != 0) {
    return refused(fmt::format("cannot be opened: {}", words_of(errno)));
  }
  // Another one may have taken its place.
  if (std::string why = why_no_file(seen.st_mode, what); !why.empty()) return refused(std::move(why));
  const auto size = static_cast<std::size_t>(seen.st_size);
  int error = 0;
  std::string bytes = size > most_bytes ? "" : bytes_of(file.get(), size, most_bytes, error);
  if (error != 0) return refused(fmt::format("cannot be read to its end: {}", words_of(error)));
  if (size > most_bytes || bytes.size() > most_bytes) {
    return refused(fmt::format("is larger than {} MB, which {} never is. Is this the right file?",
                               most_bytes / 1'000'000, what));
  }
  return bytes;
}

}  // namespace laywright
