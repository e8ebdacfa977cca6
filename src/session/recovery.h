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

#include "jobs/errands.h"
#include "session/document.h"
#include "session/keeping_news.h"

namespace laywright {

struct RecoveryOffer {
  std::filesystem::path copy;  // the file that holds it
  RecoveryCopy work;
};

class RecoveryStore {
 public:
  // Takes over what was left behind. Where the folder is empty, nothing is kept. `news` gets what came of each keep().
  RecoveryStore(const std::filesystem::path& state_folder, std::shared_ptr<ErrandQueue> chores,
                std::shared_ptr<KeepingNews> news);
  // Copies that were not removed stay for the next start.
  ~RecoveryStore();
  RecoveryStore(const RecoveryStore&) = delete;
  RecoveryStore& operator=(const RecoveryStore&) = delete;

  // What was left behind, newest first.
  [[nodiscard]] const std::vector<RecoveryOffer>& offers() const { return offers_; }
  // Takes an offer from the list and its copy from the disk: it was opened, or is not wanted. Precondition: index.
  void drop_offer(std::size_t index);

  // Written and removed by an errand; `document` names the copy.
  void keep(std::uint64_t document, std::function<RecoveryCopy()> copy);
  void remove(std::uint64_t document);

 private:
  class Lock;

  void take_over();
  void open_own();
  [[nodiscard]] std::filesystem::path copy_of(std::uint64_t document) const;

  std::shared_ptr<ErrandQueue> chores_;
  std::shared_ptr<KeepingNews> news_;
  std::filesystem::path all_;                 // where those of all programs stand; empty: nothing is wanted there
  std::filesystem::path folder_;              // of this program; empty where it could not be made
  std::vector<std::unique_ptr<Lock>> locks_;  // of folders with offers, and of folder_
  std::vector<RecoveryOffer> offers_;
};

// The text of a copy, and back; errors where it is none.
[[nodiscard]] std::string recovery_text(const RecoveryCopy& copy);
[[nodiscard]] Result<RecoveryCopy> recovery_from_text(std::string_view text, const std::string& file);

}  // namespace laywright
