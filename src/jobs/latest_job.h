// One thing that is made in the background, over and over: the newest that was asked for counts. Its caller goes on
// and takes what has come.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>

#include "base/progress.h"
#include "jobs/job_result.h"
#include "jobs/latest.h"

namespace laywright {

// What becomes of an older one that runs when a newer one is asked for. One that waits is dropped in either case.
enum class Older {
  given_up,  // told to stop, and what it comes to is not wanted
  finished,  // it comes, too: while the wishes come faster than they can be met, there is something to see
};

// One thread uses it.
template <class T>
class LatestJob {
 public:
  using Work = std::function<JobResult<T>(Progress&)>;

  // `what` stands in the words of a trouble: "the share page".
  explicit LatestJob(std::string what) : what_(std::move(what)) {}
  // Stops what runs and waits for it.
  ~LatestJob() { stop(); }
  LatestJob(const LatestJob&) = delete;
  LatestJob& operator=(const LatestJob&) = delete;

  // Returns at once. `wake` is called when there is something to take: on another thread, or here where there is none.
  void ask(Work work, std::function<void()> wake, Older older = Older::given_up) {
    if (older == Older::given_up) stop();
    newest_ = std::make_shared<Job>(++numbers_);
    latest_.run({what_,
                 [job = newest_, shared = shared_, work = std::move(work), wake] {
                   if (!shared->begin(job)) return;
                   const bool stopped = job->progress.cancelled();
                   if (shared->put(*job, stopped ? JobResult<T>(Stopped{}) : work(job->progress))) wake();
                 },
                 [job = newest_, shared = shared_, wake](const Issue& trouble) {
                   if (shared->put(*job, trouble)) wake();
                 }});
  }

  // Gives up what runs and what has not been taken.
  void stop() {
    std::unique_ptr<Ended> dropped;  // outlives the lock
    const std::lock_guard lock(shared_->mutex);
    shared_->wanted_from = numbers_ + 1;
    if (shared_->running) shared_->running->progress.cancel();
    dropped.swap(shared_->ended);
    newest_.reset();
  }
  // Asks for an end soon; what it comes to is still awaited.
  void ask_to_stop() {
    if (newest_) newest_->progress.cancel();
  }
  // Until it has ended; then there is something to take.
  void wait() { latest_.wait(); }

  // Something has come that was not taken yet.
  [[nodiscard]] bool ready() const {
    const std::lock_guard lock(shared_->mutex);
    return shared_->ended != nullptr;
  }
  // The newest that has come since; none: nothing has.
  [[nodiscard]] std::optional<JobResult<T>> take() {
    std::unique_ptr<Ended> ended;
    {
      const std::lock_guard lock(shared_->mutex);
      ended.swap(shared_->ended);
    }
    if (!ended) return std::nullopt;
    if (newest_ && ended->number == newest_->number) newest_.reset();
    return std::move(ended->result);
  }

  // The newest was neither taken nor given up.
  [[nodiscard]] bool busy() const { return newest_ != nullptr; }
  // Of the newest, 0 to 1, and since when; 0 and now where nothing is on its way.
  [[nodiscard]] double share() const { return newest_ ? newest_->progress.share() : 0.0; }
  [[nodiscard]] std::chrono::steady_clock::time_point begun() const {
    return newest_ ? newest_->begun : std::chrono::steady_clock::now();
  }

 private:
  struct Job {
    explicit Job(std::uint64_t the_number) : number(the_number) {}

    const std::uint64_t number;
    const std::chrono::steady_clock::time_point begun = std::chrono::steady_clock::now();
    Progress progress;
  };
  struct Ended {
    std::uint64_t number = 0;
    JobResult<T> result;
  };
  struct Shared {
    std::mutex mutex;
    std::uint64_t wanted_from = 0;  // older ones are given up
    std::shared_ptr<Job> running;
    std::unique_ptr<Ended> ended;

    // False: it is no longer wanted.
    bool begin(const std::shared_ptr<Job>& job) {
      const std::lock_guard lock(mutex);
      if (job->number < wanted_from) return false;
      running = job;
      return true;
    }
    bool put(const Job& job, JobResult<T> result) {
      auto fresh = std::make_unique<Ended>(Ended{job.number, std::move(result)});  // holds the older one afterwards
      const std::lock_guard lock(mutex);
      running.reset();
      if (job.number < wanted_from) return false;
      ended.swap(fresh);
      return true;
    }
  };

  const std::string what_;
  const std::shared_ptr<Shared> shared_ = std::make_shared<Shared>();
  std::uint64_t numbers_ = 0;
  std::shared_ptr<Job> newest_;
  Latest latest_;  // last: ends first
};

}  // namespace laywright
