#include "jobs/parallel.h"

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <deque>
#include <exception>
#include <mutex>
#include <optional>
#include <vector>

#include "jobs/thread.h"

namespace laywright {
namespace {

class Crew {
 public:
  Crew(std::size_t count, std::size_t size, const std::function<void(std::size_t, Progress&)>& task)
      : count_(count), task_(task), inner_(size) {
    members_.reserve(size);
  }
  Crew(const Crew&) = delete;
  Crew& operator=(const Crew&) = delete;

  // As many members as the system gives threads to; how many these are.
  std::size_t call_up() {
    while (members_.size() < inner_.size() && add_member()) {
    }
    return members_.size();
  }

  // All tasks on this thread, where no other is to be had.
  void work_alone(const Stretch& stretch) {
    inner_.clear();
    inner_.emplace_back([this, &stretch](double) { pass_on(stretch); });
    ++working_;
    pass_on(stretch);
    work(0);
    pass_on(stretch);
  }

  // Until all members have stopped.
  void watch(const Stretch& stretch) {
    std::unique_lock lock(mutex_);
    do {
      over_.wait_for(lock, std::chrono::milliseconds(20), [&] { return working_ == 0; });
      pass_on(stretch);
    } while (working_ > 0);
  }

  void rethrow() const {
    if (failure_) std::rethrow_exception(failure_);
  }

 private:
  bool add_member() {
    {
      const std::lock_guard lock(mutex_);
      ++working_;
    }
    if (std::optional<Thread> thread = Thread::start({"", [this, member = members_.size()] { work(member); }, {}})) {
      members_.push_back(std::move(*thread));  // there is room for it
      return true;
    }
    const std::lock_guard lock(mutex_);
    --working_;
    return false;
  }

  void work(std::size_t member) {
    while (const std::optional<std::size_t> index = next()) {
      if (std::optional<Trouble> trouble = attempt("", [&] { task_(*index, inner_[member]); })) fail(trouble->cause);
      const std::lock_guard lock(mutex_);
      ++done_;
      inner_[member].report(0.0);
    }
    const std::lock_guard lock(mutex_);
    --working_;
    over_.notify_one();
  }

  // Hands cancelling down and shares up.
  void pass_on(const Stretch& stretch) {
    if (stretch.progress.cancelled()) stop();
    double share = static_cast<double>(done_);
    for (const Progress& each : inner_) share += each.share();
    share = std::min(1.0, share / static_cast<double>(count_));
    stretch.progress.report(stretch.from + (stretch.to - stretch.from) * share);
  }

  std::optional<std::size_t> next() {
    const std::lock_guard lock(mutex_);
    if (stopped_ || next_ == count_) return std::nullopt;
    return next_++;
  }
  void fail(std::exception_ptr failure) {
    const std::lock_guard lock(mutex_);
    if (!failure_) failure_ = std::move(failure);
    stop();
  }
  void stop() {
    stopped_ = true;
    for (Progress& each : inner_) each.cancel();
  }

  std::size_t count_;
  const std::function<void(std::size_t, Progress&)>& task_;
  std::deque<Progress> inner_;  // one per member; they cannot be moved
  std::mutex mutex_;
  std::condition_variable over_;
  std::size_t next_ = 0, done_ = 0, working_ = 0;
  bool stopped_ = false;
  std::exception_ptr failure_;
  std::vector<Thread> members_;  // last: they use all else
};

}  // namespace

void run_parallel(std::size_t count, int threads, const Stretch& stretch,
                  const std::function<void(std::size_t, Progress&)>& task) {
  if (count == 0 || stretch.progress.cancelled()) return;
  const std::size_t size = std::min(count, static_cast<std::size_t>(std::max(1, threads)));
  Crew crew(count, size, task);
  if (crew.call_up() > 0) {
    crew.watch(stretch);
  } else {
    crew.work_alone(stretch);
  }
  crew.rethrow();
}

}  // namespace laywright
