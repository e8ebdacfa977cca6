// How long work reports how far it is and learns that it should stop. Safe to use from several threads.
#pragma once

#include <algorithm>
#include <atomic>
#include <functional>
#include <utility>

namespace laywright {

class Progress {
 public:
  Progress() = default;
  // `told` hears of each share, on the worker's own thread: for a worker whose memory nobody else can read.
  explicit Progress(std::function<void(double)> told) : told_(std::move(told)) {}

  // Share done, called by the worker. What is kept is within 0 and 1 and never falls, but for 0, with which work begins
  // anew: a measure that goes back for a while, or begins below its zero, is no share.
  void report(double share) {
    share = share > 0.0 ? std::min(1.0, std::max(share, this->share())) : 0.0;
    share_.store(share, std::memory_order_relaxed);
    if (told_) told_(share);
  }
  [[nodiscard]] double share() const { return share_.load(std::memory_order_relaxed); }

  // Asks the worker to stop soon. The worker then returns what its header promises.
  void cancel() { cancelled_.store(true, std::memory_order_relaxed); }
  [[nodiscard]] bool cancelled() const { return cancelled_.load(std::memory_order_relaxed); }

 private:
  std::atomic<double> share_{0.0};
  std::atomic<bool> cancelled_{false};
  std::function<void(double)> told_;
};

}  // namespace laywright
