// Three pictures that go around between one that paints and one that shows: the newest finished one is shown, and stays
// untouched while it is; the painter never waits.
#pragma once

#include <array>
#include <mutex>
#include <utility>

namespace laywright {

template <class Picture>
class PictureExchange {
 public:
  // Of the painter: the picture to paint on, its own until it is finished.
  [[nodiscard]] Picture& blank() { return pictures_[blank_]; }
  void finish() {
    const std::lock_guard lock(mutex_);
    std::swap(blank_, ready_);
    fresh_ = true;
  }

  // Of the one that shows: the newest that was finished, its own until the next call; null while there is none.
  [[nodiscard]] Picture* newest() {
    const std::lock_guard lock(mutex_);
    if (fresh_) {
      std::swap(shown_, ready_);
      fresh_ = false;
      any_ = true;
    }
    return any_ ? &pictures_[shown_] : nullptr;
  }
  // True if newest() would give another one than the last time.
  [[nodiscard]] bool fresh() const {
    const std::lock_guard lock(mutex_);
    return fresh_;
  }

 private:
  std::array<Picture, 3> pictures_;
  std::size_t blank_ = 0, ready_ = 1, shown_ = 2;
  bool fresh_ = false, any_ = false;
  mutable std::mutex mutex_;
};

}  // namespace laywright
