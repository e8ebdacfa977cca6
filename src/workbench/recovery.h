// Copies of unsaved work, so that a crash costs no more than the last second.
//
// Each running program has a folder of its own in STATE/recovery, with a lock that ends with it, however it ends. A
// folder whose lock is free was left behind: what it holds is offered.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

#include "workbench/document.h"
#include "workbench/errands.h"

namespace laywright {

struct RecoveryOffer {
  std::filesystem::path copy;  // the file that holds it
  RecoveryCopy work;
};

class RecoveryStore {
 public:
  // Takes over what was left behind. Where the folder cannot be made (or is empty), nothing is kept: see works().
  RecoveryStore(const std::filesystem::path& state_folder, std::shared_ptr<ErrandQueue> chores);
  // Copies that were not removed stay for the next start.
  ~RecoveryStore();
  RecoveryStore(const RecoveryStore&) = delete;
  RecoveryStore& operator=(const RecoveryStore&) = delete;

  [[nodiscard]] bool works() const { return !folder_.empty(); }

  // What was left behind, newest first.
  [[nodiscard]] const std::vector<RecoveryOffer>& offers() const { return offers_; }
  // Takes an offer from the list and its copy from the disk: it was opened, or is not wanted. Precondition: index.
  void drop_offer(std::size_t index);

  // Written and removed by an errand; `document` names the copy.
  void keep(std::uint64_t document, std::function<RecoveryCopy()> copy);
  void remove(std::uint64_t document);

 private:
  class Lock;

  void take_over(const std::filesystem::path& all);
  void open_own(const std::filesystem::path& all);
  [[nodiscard]] std::filesystem::path copy_of(std::uint64_t document) const;

  std::shared_ptr<ErrandQueue> chores_;
  std::filesystem::path folder_;              // of this program; empty when nothing is kept
  std::vector<std::unique_ptr<Lock>> locks_;  // of folders with offers, and of folder_
  std::vector<RecoveryOffer> offers_;
};

// The text of a copy, and back; errors where it is none.
[[nodiscard]] std::string recovery_text(const RecoveryCopy& copy);
[[nodiscard]] Result<RecoveryCopy> recovery_from_text(std::string_view text, const std::string& file);

}  // namespace laywright
