// Does one task at a time in the background, always the newest.
#pragma once

#include <condition_variable>
#include <mutex>
#include <optional>

#include "jobs/thread.h"

namespace laywright {

class Latest {
 public:
  Latest() = default;
  // Drops a task that waits, and waits for the one that runs; whoever gave it should have told it to stop.
  ~Latest();
  Latest(const Latest&) = delete;
  Latest& operator=(const Latest&) = delete;

  // Returns at once. A task that still waits is dropped for this one. The first one starts the thread; where the system
  // gives none, that is the task's trouble, told at once and here, and the next task tries again.
  void run(Task task);

  // Until nothing runs and nothing waits.
  void wait();

 private:
  void loop();

  std::mutex mutex_;
  std::condition_variable news_, rest_;
  std::optional<Task> next_;
  bool runs_ = false, over_ = false;
  std::optional<Thread> thread_;
};

}  // namespace laywright
