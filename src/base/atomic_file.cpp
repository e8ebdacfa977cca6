#include "base/atomic_file.h"

#include <cerrno>
#include <new>
#include <optional>
#include <streambuf>
#include <system_error>
#include <vector>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/descriptor.h"
#include "base/leftover.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

Issues failed(const fs::path& path, const std::string& why) {
  Issue issue;
  issue.file = path.string();
  issue.what = fmt::format("cannot be written: {}; nothing was changed", why);
  return {issue};
}

Issues failed(const fs::path& path, int error) { return failed(path, std::generic_category().message(error)); }

// 0, or the error.
int write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(fd, bytes.data(), bytes.size());
    if (written < 0) {
      if (errno == EINTR) continue;
      return errno;
    }
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

// A stream into a file descriptor, which keeps the first error.
class DescriptorBuffer : public std::streambuf {
 public:
  explicit DescriptorBuffer(int fd) : fd_(fd), held_(1U << 16U) { setp(held_.data(), held_.data() + held_.size()); }
  [[nodiscard]] int error() const { return error_; }

 protected:
  int sync() override {
    const std::string_view waiting(pbase(), static_cast<std::size_t>(pptr() - pbase()));
    if (error_ == 0) error_ = write_all(fd_, waiting);
    setp(held_.data(), held_.data() + held_.size());
    return error_ == 0 ? 0 : -1;
  }
  int_type overflow(int_type c) override {
    if (sync() != 0) return traits_type::eof();
    return traits_type::eq_int_type(c, traits_type::eof()) ? traits_type::not_eof(c)
                                                           : sputc(traits_type::to_char_type(c));
  }
  // What is large is not copied first.
  std::streamsize xsputn(const char* bytes, std::streamsize count) override {
    if (count < epptr() - pbase()) return std::streambuf::xsputn(bytes, count);
    if (sync() != 0) return 0;
    error_ = write_all(fd_, std::string_view(bytes, static_cast<std::size_t>(count)));
    return error_ == 0 ? count : 0;
  }

 private:
  int fd_, error_ = 0;
  std::vector<char> held_;
};

// Puts all bytes of a file into a descriptor. 0, or the error; ECANCELED when it gave up.
using Put = std::function<int(int fd)>;

Put put_of(const std::function<bool(std::ostream&)>& write) {
  return [&write](int fd) {
    try {
      DescriptorBuffer buffer(fd);
      std::ostream out(&buffer);
      const bool complete = write(out);
      out.flush();
      if (buffer.error() != 0) return buffer.error();
      if (!complete) return ECANCELED;
      return out ? 0 : EIO;
    } catch (const std::bad_alloc&) {
      return ENOMEM;
    }
  };
}

// The mode and, where allowed, the owner of the file that is about to be replaced.
void keep_permissions(int fd, const struct stat& old) {
  // Only the superuser may give a file away; for everybody else the new file is their own.
  if (::fchown(fd, old.st_uid, old.st_gid) != 0) errno = 0;
  if (::fchmod(fd, old.st_mode & 07777) != 0) errno = 0;
}

// 0, or the error. The temporary file is gone in either case.
int replace(const fs::path& target, const struct stat* old, const Put& put) {
  auto [file, temporary] = make_hidden_file(target);
  if (!file.ok()) return errno;
  // Closing would give up the lock before the file has its name.
  const Descriptor lock(::fcntl(file.get(), F_DUPFD_CLOEXEC, 0));

  int error = put(file.get());
  if (error == 0 && old != nullptr) keep_permissions(file.get(), *old);
  if (error == 0 && ::fsync(file.get()) != 0) error = errno;
  if (const int on_close = file.close(); error == 0) error = on_close;
  if (error == 0 && ::rename(temporary.c_str(), target.c_str()) != 0) error = errno;
  if (error != 0) ::unlink(temporary.c_str());
  return error;
}

// Where the links of a name end, whether something stands there or not. None where they go round.
std::optional<fs::path> end_of_links(fs::path path) {
  constexpr int most = 40;  // as many as Linux follows
  for (int links = 0; links <= most; ++links) {
    std::error_code no_link;
    const fs::path to = fs::read_symlink(path, no_link);
    if (no_link) return path;
    path = path.parent_path() / to;  // which an absolute one replaces
  }
  return std::nullopt;
}

int write_through(const fs::path& path, const Put& put) {
  // A pipe that nobody reads would be waited for without end.
  Descriptor file(::open(path.c_str(), O_WRONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC));
  if (!file.ok()) return errno;
  const int flags = ::fcntl(file.get(), F_GETFL);
  if (flags < 0 || ::fcntl(file.get(), F_SETFL, flags & ~O_NONBLOCK) != 0) return errno;
  if (const int error = put(file.get()); error != 0) return error;
  return file.close();
}

Issues write_atomically(const fs::path& path, const Put& put) {
  if (path.empty()) return failed(path, "no file name was given");

  struct stat old {};
  const bool exists = ::stat(path.c_str(), &old) == 0;
  if (exists && S_ISDIR(old.st_mode)) return failed(path, "it is a folder; give the name of a file");
  if (exists && !S_ISREG(old.st_mode)) {
    const int code = write_through(path, put);
    if (code == ENXIO) return failed(path, "nobody reads from this pipe; start what reads it first");
    return code == 0 || code == ECANCELED ? Issues{} : failed(path, code);
  }
  if (exists && ::access(path.c_str(), W_OK) != 0) return failed(path, "it is write-protected");

  const std::optional<fs::path> target = end_of_links(path);
  if (!target) return failed(path, ELOOP);
  if (const int code = replace(*target, exists ? &old : nullptr, put); code != 0) {
    if (code == ECANCELED) return {};
    return failed(path, code == ENOENT ? "its folder does not exist" : std::generic_category().message(code));
  }
  sync_folder(target->has_parent_path() ? target->parent_path() : fs::path("."));
  return {};
}

}  // namespace

Issues write_file_here(const fs::path& path, const std::function<bool(std::ostream&)>& write) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
  if (!file.ok()) return failed(path, errno);
  int error = put_of(write)(file.get());
  if (const int on_close = file.close(); error == 0) error = on_close;
  if (error == 0) return {};
  ::unlink(path.c_str());
  return error == ECANCELED ? Issues{} : failed(path, error);
}

Issues sync_file(const fs::path& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  return file.ok() && ::fsync(file.get()) == 0 ? Issues{} : failed(path, errno);
}

void sync_folder(const fs::path& folder) {
  const Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (opened.ok()) ::fsync(opened.get());
}

Issues write_file_atomically(const fs::path& path, std::string_view bytes) {
  return write_atomically(path, [bytes](int fd) { return write_all(fd, bytes); });
}

Issues write_file_atomically(const fs::path& path, const std::function<bool(std::ostream&)>& write) {
  return write_atomically(path, put_of(write));
}

}  // namespace laywright
