#include "paper/set_in_place.h"

#include <cerrno>
#include <cstdlib>
#include <sstream>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>

#include "base/atomic_file.h"
#include "base/folder_paths.h"
#include "base/leftover.h"
#include "base/read_file.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;
using Names = std::vector<std::string>;

constexpr const char* list_name = "set";
constexpr std::size_t largest_list_bytes = 10'000'000;

// While it lives, no other program puts files in place here.
Descriptor alone_in(const fs::path& folder) {
  Descriptor file(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  while (file.ok() && ::flock(file.get(), LOCK_EX) != 0 && errno == EINTR) {
  }
  return file;
}

bool stands(const fs::path& path) {
  std::error_code error;
  return fs::exists(fs::symlink_status(path, error));
}

// Moves files, and back again.
class Mover {
 public:
  Mover(fs::path folder, const fs::path& staging)
      : folder_(std::move(folder)), new_(staging / "new"), old_(staging / "old") {}

  // The old ones go, those whose successor waits.
  void out(const Names& names) {
    for (const std::string& name : names) {
      if (stands(new_ / name) && stands(folder_ / name)) move(name, folder_, old_);
    }
    sync_folder(folder_);
  }
  void in(const std::string& name) {
    if (stands(new_ / name)) move(name, new_, folder_);
  }
  void undo() {
    for (auto step = done_.rbegin(); step != done_.rend(); ++step) {
      if (::rename((step->to / step->name).c_str(), (step->from / step->name).c_str()) != 0) placed_.undone = false;
    }
  }
  [[nodiscard]] const Placed& placed() const { return placed_; }

 private:
  struct Step {
    std::string name;
    const fs::path &from, &to;
  };

  void move(const std::string& name, const fs::path& from, const fs::path& to) {
    if (!placed_.name.empty()) return;
    if (::rename((from / name).c_str(), (to / name).c_str()) == 0) {
      done_.push_back({name, from, to});
    } else {
      placed_.why = std::generic_category().message(errno);
      placed_.name = name;
    }
  }

  fs::path folder_, new_, old_;
  std::vector<Step> done_;
  Placed placed_;
};

Placed move_set(const fs::path& folder, const fs::path& staging, const Names& names) {
  Mover mover(folder, staging);
  // One file takes the place of another at once.
  if (names.size() > 1) mover.out(names);
  for (auto name = names.begin() + 1; name != names.end(); ++name) mover.in(*name);
  sync_folder(folder);
  mover.in(names.front());
  sync_folder(folder);
  if (!mover.placed().name.empty()) mover.undo();
  return mover.placed();
}

// The files of a complete set; none of one that is not.
Names listed(const fs::path& staging) {
  Names names;
  const Result<std::string> list = read_file(staging / list_name, "a list of files", largest_list_bytes);
  if (!list) return names;
  std::istringstream lines(list.value());
  for (std::string name; std::getline(lines, name);) {
    if (!name.empty() && fs::path(name).filename() == name) names.push_back(name);
  }
  return names;
}

bool is_staging_name(std::string_view name) {
  constexpr std::size_t random_letters = 6;
  return name.starts_with(hidden_prefix) && name.size() == hidden_prefix.size() + random_letters;
}

void finish(const fs::path& folder, const fs::path& staging) {
  const Descriptor lock(::open(staging.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC));
  if (!lock.ok() || take_hold(lock, staging) != Hold::ours) return;
  const Names names = listed(staging);
  if (!names.empty() && !move_set(folder, staging, names).name.empty()) return;
  remove_staging(staging);
}

}  // namespace

Staging make_staging(const fs::path& folder) {
  for (;;) {
    std::string path = (folder / fmt::format("{}XXXXXX", hidden_prefix)).string();
    if (::mkdtemp(path.data()) == nullptr) return {};
    Staging staging{path, Descriptor(::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC))};
    // Before it was locked, somebody may have taken it for a leftover.
    const bool gone = !staging.lock.ok() && errno == ENOENT;
    if (gone || (staging.lock.ok() && take_hold(staging.lock, staging.path) == Hold::of_others)) continue;
    std::error_code error;
    for (const char* part : {"new", "old"}) {
      if (fs::create_directory(staging.path / part, error)) continue;
      remove_staging(staging.path);
      errno = error.value();
      return {};
    }
    return staging;
  }
}

void remove_staging(const fs::path& staging) {
  std::error_code error;
  fs::remove(staging / list_name, error);
  fs::remove_all(staging, error);
}

void clear_leftovers(const fs::path& folder) {
  const Descriptor alone = alone_in(folder);
  std::error_code error;
  for (const fs::path& path : paths_in(folder, error)) {
    const std::string name = path.filename().string();
    if (is_staging_name(name)) finish(folder, path);
    if (name.starts_with(hidden_prefix) && name.ends_with(".tmp")) remove_left_file(path);
  }
}

Placed put_in_place(const fs::path& folder, const fs::path& staging, const Names& names) {
  if (names.empty()) return {};
  const Descriptor alone = alone_in(folder);
  // At the end and not one by one: the first brings most of the others along.
  for (const std::string& name : names) {
    if (const Issues trouble = sync_file(staging / "new" / name); !trouble.empty()) {
      return {name, trouble.front().what, true};
    }
  }
  sync_folder(staging / "new");
  const Issues trouble = write_file_atomically(staging / list_name, fmt::format("{}\n", fmt::join(names, "\n")));
  if (!trouble.empty()) return {names.front(), trouble.front().what, true};
  return move_set(folder, staging, names);
}

}  // namespace laywright
