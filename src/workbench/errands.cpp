#include "workbench/errands.h"

#include <algorithm>
#include <new>
#include <utility>

namespace laywright {

void ErrandQueue::post(std::string key, std::function<void()> errand) {
  {
    const std::lock_guard lock(mutex_);
    if (!closed_) {
      const auto same = std::find_if(waiting_.begin(), waiting_.end(),
                                     [&](const Errand& other) { return !key.empty() && other.key == key; });
      if (same != waiting_.end()) {
        same->run = std::move(errand);
      } else {
        waiting_.push_back({std::move(key), std::move(errand)});
      }
      news_.notify_one();
      return;
    }
  }
  errand();
}

void ErrandQueue::run_all() {
  std::unique_lock lock(mutex_);
  while (true) {
    news_.wait(lock, [&] { return closed_ || !waiting_.empty(); });
    if (waiting_.empty()) return;
    Errand errand = std::move(waiting_.front());
    waiting_.pop_front();
    lock.unlock();
    try {
      errand.run();
    } catch (const std::bad_alloc&) {
      // A chore that there is no memory for is left undone: that is no reason to end the program.
    }
    errand.run = nullptr;  // what it holds is let go here, without the lock
    lock.lock();
  }
}

void ErrandQueue::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  news_.notify_one();
}

Errands::Errands() : queue_(std::make_shared<ErrandQueue>()), thread_([queue = queue_] { queue->run_all(); }) {}

Errands::~Errands() {
  queue_->close();
  thread_.join();
}

}  // namespace laywright
