// Stands beside long work: draws a progress bar on standard error when that is a terminal, and turns Ctrl-C
// (SIGINT, and SIGTERM) into a cancelled Progress, so that the work can end tidily.
#pragma once

#include <csignal>

#include <atomic>
#include <optional>

#include "base/progress.h"
#include "jobs/thread.h"

namespace laywright {

class Watch {
 public:
  // From here on the two signals no longer end the program. Call before other threads are started. Where the system gives
  // no thread there is no bar, and the signals act as before: what is written is renamed into place only when whole.
  Watch();
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

  // Erases the bar; the signals act as before.
  ~Watch();

  // Names the work that begins now ("laying"), in static storage. The bar starts again from nothing.
  void begin(const char* stage);

  // Of several plans, that this one is worked on, 1 = the first: the bar says so from here on.
  void begin_plan(int number, int of);

  [[nodiscard]] Progress& progress() { return progress_; }

 private:
  void run();

  Progress progress_;
  std::atomic<const char*> stage_{nullptr};
  std::atomic<int> plan_{0}, plans_{0};
  std::atomic<bool> over_{false};
  sigset_t before_{};
  std::optional<Thread> thread_;
};

}  // namespace laywright
