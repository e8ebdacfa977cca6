// Notices when the file of an open plan is changed by others.
#pragma once

#include <filesystem>
#include <memory>

#include "jobs/errands.h"

namespace laywright {

enum class OnDisk { same, changed, gone };

class DiskWatch {
 public:
  // Takes the file as it is now for the known one.
  explicit DiskWatch(std::filesystem::path file);
  // Of a file that is not what the document knows: changed, as long as it is there.
  [[nodiscard]] static DiskWatch of_changed(std::filesystem::path file);

  // Has `chores` look at the file; the answer is there a moment later. `wake` is called when it has changed.
  void look(ErrandQueue& chores, const std::function<void()>& wake);

  // As last seen.
  [[nodiscard]] OnDisk seen() const;

  // Looks at once: for the moment before the file is written. Blocks as long as the disk does.
  [[nodiscard]] OnDisk look_now();

 private:
  struct Stamp;
  struct Shared;
  explicit DiskWatch(std::shared_ptr<Shared> shared);
  std::shared_ptr<Shared> shared_;  // with an errand that may still wait when the watch is gone
};

}  // namespace laywright
