#include "session/disk_watch.h"

#include <mutex>
#include <utility>

#include <fmt/format.h>
#include <sys/stat.h>

namespace laywright {

// What tells two contents of a file apart without reading it: replacing a file gives it a new number, writing to it a
// new time.
struct DiskWatch::Stamp {
  bool exists = false;
  ino_t number = 0;
  off_t size = 0;
  timespec written{};

  [[nodiscard]] static Stamp of(const std::filesystem::path& file) {
    struct stat now {};
    if (::stat(file.c_str(), &now) != 0) return {};
    return {true, now.st_ino, now.st_size, now.st_mtim};
  }
  [[nodiscard]] bool operator==(const Stamp& other) const {
    return exists == other.exists && number == other.number && size == other.size &&
           written.tv_sec == other.written.tv_sec && written.tv_nsec == other.written.tv_nsec;
  }
};

struct DiskWatch::Shared {
  Shared(std::filesystem::path the_file, Stamp the_known) : file(std::move(the_file)), known(the_known) {}

  // True if the answer is a new one.
  bool look() {
    const Stamp now = Stamp::of(file);
    const std::lock_guard lock(mutex);
    const OnDisk before = seen;
    seen = now == known ? OnDisk::same : now.exists ? OnDisk::changed : OnDisk::gone;
    return seen != before;
  }

  const std::filesystem::path file;
  const Stamp known;
  std::mutex mutex;
  OnDisk seen = OnDisk::same;
};

DiskWatch::DiskWatch(std::shared_ptr<Shared> shared) : shared_(std::move(shared)) {}

DiskWatch::DiskWatch(std::filesystem::path file) {
  const Stamp now = Stamp::of(file);
  shared_ = std::make_shared<Shared>(std::move(file), now);
}

DiskWatch DiskWatch::of_changed(std::filesystem::path file) {
  return DiskWatch(std::make_shared<Shared>(std::move(file), Stamp{}));
}

void DiskWatch::look(ErrandQueue& chores, const std::function<void()>& wake) {
  chores.post(fmt::format("watch {}", shared_->file.string()), [shared = shared_, wake] {
    if (shared->look()) wake();
  });
}

OnDisk DiskWatch::seen() const {
  const std::lock_guard lock(shared_->mutex);
  return shared_->seen;
}

OnDisk DiskWatch::look_now() {
  shared_->look();
  return seen();
}

}  // namespace laywright
