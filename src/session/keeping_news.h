// Whether what the program keeps for its next start can be kept: from the thread that writes it to the one that tells.
#pragma once

#include <functional>
#include <mutex>
#include <optional>
#include <utility>

#include "base/issue.h"

namespace laywright {

class KeepingNews {
 public:
  // `wake` is called when there is something to tell.
  explicit KeepingNews(std::function<void()> wake) : wake_(std::move(wake)) {}

  // What came of a try; empty: it was kept.
  void put(Issues outcome) {
    {
      const std::lock_guard lock(mutex_);
      const bool was_failing = std::exchange(failing_, !outcome.empty());
      if (!failing_ || was_failing) return;
      begun_ = std::move(outcome);
    }
    wake_();
  }
  // The trouble that has begun since: each is told once, however often it is met.
  [[nodiscard]] std::optional<Issues> take() {
    const std::lock_guard lock(mutex_);
    return std::exchange(begun_, std::nullopt);
  }

 private:
  const std::function<void()> wake_;
  std::mutex mutex_;
  bool failing_ = false;
  std::optional<Issues> begun_;
};

}  // namespace laywright
