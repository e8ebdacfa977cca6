// A thread for small chores that must not hold up the window: writing recovery copies and settings, looking whether
// a file has changed on disk, freeing large memory.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <thread>

namespace laywright {

// Where errands are left; it may outlive the thread that runs them. After that they run at once, where they are
// posted. Safe to use from several threads.
class ErrandQueue {
 public:
  // A newer errand of the same key takes the place of one that still waits; an empty key replaces nothing.
  void post(std::string key, std::function<void()> errand);
  void post(std::function<void()> errand) { post("", std::move(errand)); }

 private:
  friend class Errands;
  struct Errand {
    std::string key;
    std::function<void()> run;
  };

  void run_all();
  void close();

  std::mutex mutex_;
  std::condition_variable news_;
  std::deque<Errand> waiting_;
  bool closed_ = false;
};

class Errands {
 public:
  Errands();
  // Runs what still waits, then ends the thread.
  ~Errands();
  Errands(const Errands&) = delete;
  Errands& operator=(const Errands&) = delete;

  [[nodiscard]] const std::shared_ptr<ErrandQueue>& queue() const { return queue_; }
  void post(std::string key, std::function<void()> errand) { queue_->post(std::move(key), std::move(errand)); }

 private:
  std::shared_ptr<ErrandQueue> queue_;
  std::thread thread_;
};

}  // namespace laywright
