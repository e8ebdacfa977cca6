#pragma once

#include <atomic>

namespace laywright {

// Something that one thread waits for and another one lets happen.
class Flag {
 public:
  void set() {
    set_ = true;
    set_.notify_all();
  }
  void wait() const { set_.wait(false); }
  [[nodiscard]] bool is_set() const { return set_; }

 private:
  std::atomic<bool> set_{false};
};

}  // namespace laywright
