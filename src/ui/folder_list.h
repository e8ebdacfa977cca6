// What stands in a folder, read on a thread of its own and again whenever the folder changes.
#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "ui/panel_work.h"

namespace laywright {

struct FolderEntry {
  std::string name;
  bool folder = false;
};

struct FolderListing {
  std::string folder;
  std::string ending;                       // of the files that are listed; empty: of all
  std::filesystem::file_time_type changed;  // of the folder
  std::vector<FolderEntry> entries;         // folders first, then files, by name; hidden ones left out
  std::string trouble;                      // why it cannot be read; empty: it was read
};

// Reads it: folders, and files that end so; at most 5000 entries.
[[nodiscard]] FolderListing list_folder(const std::string& folder, const std::string& ending);

class FolderList {
 public:
  using Clock = std::chrono::steady_clock;

  // The newest listing of this folder, and from time to time a look whether it has changed. Null until it was read.
  [[nodiscard]] const FolderListing* of(const std::string& folder, const std::string& ending,
                                        const std::function<void()>& wake);
  // The next look is due, or something was read; none while nobody asks.
  [[nodiscard]] std::optional<double> seconds_to_look() const;
  void close() { looked_at_.reset(); }

 private:
  FolderListing listing_;
  std::string asked_folder_, asked_ending_;
  std::optional<Clock::time_point> looked_at_;
  PanelWork<std::optional<FolderListing>> work_{"the list of files"};  // none: nothing has changed
};

}  // namespace laywright
