// The one place that starts threads. Everything else asks here, and has an answer for where there is none to be had.
#pragma once

#include <optional>
#include <thread>
#include <utility>

#include "jobs/trouble.h"

namespace laywright {

// As many as the machine runs at once; at least 1.
[[nodiscard]] int threads_at_hand();

class Thread {
 public:
  // Carries the task out on a thread of its own. None where the system gives none (too many run, no memory for its
  // stack, a browser); then nothing of the task was done.
  [[nodiscard]] static std::optional<Thread> start(Task task);

  ~Thread();  // waits for its end
  Thread(Thread&&) noexcept = default;
  Thread& operator=(Thread&& other) noexcept;  // waits for the end of what it was

  // For a signal to it.
  [[nodiscard]] std::thread::native_handle_type handle() { return thread_.native_handle(); }

 private:
  explicit Thread(std::thread thread) : thread_(std::move(thread)) {}

  std::thread thread_;
};

}  // namespace laywright
