// Small chores that must not hold up a window, done in order in the background: writing recovery copies and settings,
// looking whether a file has changed on disk, freeing large memory.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "jobs/thread.h"

namespace laywright {

// Where errands are left; it may outlive the thread that runs them. After that they run at once, where they are
// posted. Safe to use from several threads.
class ErrandQueue {
 public:
  // A newer errand of the same key takes the place of one that still waits; an empty key replaces nothing. Nothing
  // escapes: where there is no memory to let it wait, it runs here.
  void post(std::string key, Task errand) noexcept;
  // One that may be left undone without a word.
  void post(std::string key, std::function<void()> errand) { post(std::move(key), Task{"", std::move(errand), {}}); }

 private:
  friend class Errands;
  struct Errand {
    std::string key;
    Task task;
  };

  void run_all();
  void open();
  void close();

  std::mutex mutex_;
  std::condition_variable news_;
  std::deque<Errand> waiting_;
  bool open_ = false;
};

class Errands {
 public:
  // Where the system gives no thread, errands run at once, where they are posted.
  Errands();
  // Runs what still waits, then ends the thread.
  ~Errands();
  Errands(const Errands&) = delete;
  Errands& operator=(const Errands&) = delete;

  [[nodiscard]] const std::shared_ptr<ErrandQueue>& queue() const { return queue_; }

 private:
  std::shared_ptr<ErrandQueue> queue_;
  std::optional<Thread> thread_;
};

}  // namespace laywright
