// A thread that runs one job at a time, always the newest.
#pragma once

#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>

namespace laywright {

class Worker {
 public:
  Worker();
  // Drops a job that waits, and waits for the one that runs; whoever gave it should have told it to stop.
  ~Worker();
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  // Returns at once. A job that still waits is dropped for this one.
  void run(std::function<void()> job);

 private:
  void loop();

  std::mutex mutex_;
  std::condition_variable news_;
  std::function<void()> next_;
  bool over_ = false;
  std::thread thread_;  // last, so that all else is there when it starts
};

}  // namespace laywright
