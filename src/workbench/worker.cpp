#include "workbench/worker.h"

#include <utility>

namespace laywright {

Worker::Worker() : thread_([this] { loop(); }) {}

Worker::~Worker() {
  {
    const std::lock_guard lock(mutex_);
    over_ = true;
    next_ = nullptr;
  }
  news_.notify_one();
  thread_.join();
}

void Worker::run(std::function<void()> job) {
  {
    const std::lock_guard lock(mutex_);
    if (over_) return;
    next_ = std::move(job);
  }
  news_.notify_one();
}

void Worker::loop() {
  std::unique_lock lock(mutex_);
  while (true) {
    news_.wait(lock, [&] { return over_ || next_; });
    if (over_) return;
    std::function<void()> job = std::exchange(next_, nullptr);
    lock.unlock();
    job();
    job = nullptr;
    lock.lock();
  }
}

}  // namespace laywright
