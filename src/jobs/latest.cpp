#include "jobs/latest.h"

#include <utility>

namespace laywright {

Latest::~Latest() {
  std::optional<Task> dropped;  // what it holds is let go without the lock
  {
    const std::lock_guard lock(mutex_);
    over_ = true;
    dropped.swap(next_);
  }
  news_.notify_one();
  thread_.reset();
}

void Latest::run(Task task) {
  std::optional<Task> given(std::move(task));
  bool begins = false;
  {
    const std::lock_guard lock(mutex_);
    given.swap(next_);
    if (!thread_) thread_ = Thread::start({"", [this] { loop(); }, {}});  // it waits for the lock
    begins = thread_.has_value();
    if (!begins) given.swap(next_);
  }
  news_.notify_one();
  if (!begins && given->failed) given->failed(no_thread_for(given->what));
}

void Latest::wait() {
  std::unique_lock lock(mutex_);
  rest_.wait(lock, [&] { return !runs_ && !next_; });
}

void Latest::loop() {
  std::unique_lock lock(mutex_);
  while (true) {
    news_.wait(lock, [&] { return over_ || next_; });
    if (over_) return;
    std::optional<Task> task;
    task.swap(next_);
    runs_ = true;
    lock.unlock();
    carry_out(*task);
    task.reset();  // what it holds is let go here, without the lock
    lock.lock();
    runs_ = false;
    rest_.notify_all();
  }
}

}  // namespace laywright
