// Folders that can no longer be read after so many entries, as on a disk or a network that goes away: while one of these
// lives, for all of the test program. Its source stands in each program that uses it, in the place of the system's readdir.
#pragma once

namespace laywright::testing {

class FailingFolders {
 public:
  // `entries` of each are read before; "." and ".." are two.
  explicit FailingFolders(int entries);
  ~FailingFolders();
  FailingFolders(const FailingFolders&) = delete;
  FailingFolders& operator=(const FailingFolders&) = delete;
};

}  // namespace laywright::testing
