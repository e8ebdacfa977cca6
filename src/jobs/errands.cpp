#include "jobs/errands.h"

#include <algorithm>
#include <utility>

namespace laywright {

void ErrandQueue::post(std::string key, Task errand) noexcept {
  Task older;  // what it holds is let go without the lock
  bool waits = false;
  // What could not be put there is still whole.
  (void)attempt(errand.what, [&] {
    const std::lock_guard lock(mutex_);
    if (!open_) return;
    const auto same = std::find_if(waiting_.begin(), waiting_.end(),
                                   [&](const Errand& other) { return !key.empty() && other.key == key; });
    if (same != waiting_.end()) {
      older = std::exchange(same->task, std::move(errand));
    } else {
      waiting_.emplace_back();
      waiting_.back() = {std::move(key), std::move(errand)};
    }
    waits = true;
    news_.notify_one();
  });
  if (!waits) carry_out(errand);
}

void ErrandQueue::run_all() {
  std::unique_lock lock(mutex_);
  while (true) {
    news_.wait(lock, [&] { return !open_ || !waiting_.empty(); });
    if (waiting_.empty()) return;
    Errand errand = std::move(waiting_.front());
    waiting_.pop_front();
    lock.unlock();
    carry_out(errand.task);
    errand = {};  // what it holds is let go here, without the lock
    lock.lock();
  }
}

void ErrandQueue::open() {
  const std::lock_guard lock(mutex_);
  open_ = true;
}

void ErrandQueue::close() {
  const std::lock_guard lock(mutex_);
  open_ = false;
  news_.notify_one();
}

Errands::Errands() : queue_(std::make_shared<ErrandQueue>()) {
  queue_->open();
  thread_ = Thread::start({"", [queue = queue_] { queue->run_all(); }, {}});
  if (!thread_) queue_->close();
}

Errands::~Errands() { queue_->close(); }

}  // namespace laywright
