// Something that a panel shows and that takes longer to make than a frame may: made on a thread of its own, always the
// newest that was asked for. What was made before stays in sight until then, and where memory lacks for the new.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <new>
#include <optional>
#include <utility>

#include "workbench/worker.h"

namespace laywright {

template <class Made>
class PanelWork {
 public:
  // `wake` is called on the other thread when it is made.
  void ask(std::function<Made()> make, std::function<void()> wake) {
    if (!worker_) worker_ = std::make_unique<Worker>();
    worker_->run([shared = shared_, make = std::move(make), wake = std::move(wake)] {
      try {
        Made made = make();
        const std::lock_guard lock(shared->mutex);
        shared->fresh = std::move(made);
      } catch (const std::bad_alloc&) {
        return;
      }
      if (wake) wake();
    });
  }

  // True: something was made that has not been taken yet.
  [[nodiscard]] bool ready() const {
    const std::lock_guard lock(shared_->mutex);
    return shared_->fresh.has_value();
  }
  [[nodiscard]] std::optional<Made> take() {
    const std::lock_guard lock(shared_->mutex);
    return std::exchange(shared_->fresh, std::nullopt);
  }

 private:
  struct Shared {
    std::mutex mutex;
    std::optional<Made> fresh;
  };
  std::shared_ptr<Shared> shared_ = std::make_shared<Shared>();
  std::unique_ptr<Worker> worker_;  // ends before what it fills
};

}  // namespace laywright
