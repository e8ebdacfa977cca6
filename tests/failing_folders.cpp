#include "failing_folders.h"

#include <atomic>
#include <cerrno>
#include <map>
#include <mutex>

#include <dirent.h>
#include <dlfcn.h>

namespace {

std::atomic<int> most_entries{-1};  // below 0: folders do not fail

// How many entries were read of a folder that is open.
int count_of(DIR* folder) {
  static std::mutex mutex;
  static std::map<int, int> counts;
  const std::lock_guard lock(mutex);
  // A descriptor that is at its beginning is a folder opened anew.
  return ::telldir(folder) == 0 ? counts[::dirfd(folder)] = 1 : ++counts[::dirfd(folder)];
}

}  // namespace

extern "C" dirent* readdir(DIR* folder) {
  using Function = dirent* (*)(DIR*);
  static const auto real = reinterpret_cast<Function>(::dlsym(RTLD_NEXT, "readdir"));
  if (const int most = most_entries; most >= 0 && count_of(folder) > most) {
    errno = EIO;
    return nullptr;
  }
  return real(folder);
}

namespace laywright::testing {

FailingFolders::FailingFolders(int entries) { most_entries = entries; }
FailingFolders::~FailingFolders() { most_entries = -1; }

}  // namespace laywright::testing
