#include "jobs/thread.h"

#include <algorithm>
#include <utility>

namespace laywright {

int threads_at_hand() { return std::max(1, static_cast<int>(std::thread::hardware_concurrency())); }

std::optional<Thread> Thread::start(Task task) {
  std::thread begun;
  // What keeps a thread from starting is always the same: the system lacks something.
  (void)attempt("a thread", [&] { begun = std::thread([task = std::move(task)] { carry_out(task); }); });
  if (!begun.joinable()) return std::nullopt;
  return Thread(std::move(begun));
}

Thread& Thread::operator=(Thread&& other) noexcept {
  if (thread_.joinable()) thread_.join();
  thread_ = std::move(other.thread_);
  return *this;
}

Thread::~Thread() {
  if (thread_.joinable()) thread_.join();
}

}  // namespace laywright
