// A question that takes long to answer: worked on by a thread of its own while the window goes on. The newest one counts.
#pragma once

#include <chrono>
#include <exception>
#include <functional>
#include <memory>
#include <mutex>
#include <new>
#include <optional>
#include <string>
#include <utility>

#include "base/progress.h"
#include "base/result.h"
#include "jobs/trouble.h"
#include "workbench/worker.h"

namespace laywright {

struct InquiryStatus {
  bool busy = false;
  bool stopped = false;                // the last one, by the person
  double share = 0.0;                  // done, 0 to 1
  std::optional<double> seconds_left;  // an estimate; none while there is too little to go by
  std::string trouble;                 // why there is no answer; empty: nothing wrong
};

// Of work that began then and has done so much.
[[nodiscard]] std::optional<double> seconds_left(std::chrono::steady_clock::time_point begun, double share);

// One thread uses it.
template <class Answer>
class Inquiry {
 public:
  // `wake` is called on the other thread when there is something to take.
  explicit Inquiry(std::function<void()> wake) : wake_(std::move(wake)) {}
  // Stops what runs and waits for it.
  ~Inquiry() { stop(); }
  Inquiry(const Inquiry&) = delete;
  Inquiry& operator=(const Inquiry&) = delete;

  // Returns at once; an older one is given up. Its answer stays until there is a newer one.
  void ask(std::function<Result<Answer>(Progress&)> work) {
    stop();
    stopped_ = false;
    trouble_.clear();
    if (!worker_) worker_ = std::make_unique<Worker>();
    task_ = std::make_shared<Task>();
    worker_->run([task = task_, work = std::move(work), wake = wake_] {
      finish(*task, work);
      wake();
    });
  }
  void stop() {
    if (!task_) return;
    task_->progress.cancel();
    task_.reset();
    stopped_ = true;
  }
  void forget() {
    answer_.reset();
    stopped_ = false;
    trouble_.clear();
  }

  // Takes what has come since: true if something has.
  bool poll() {
    if (!task_) return false;
    {
      const std::lock_guard lock(task_->mutex);
      if (!task_->ended) return false;
      if (task_->answer) answer_ = std::move(task_->answer);
      trouble_ = task_->trouble;
    }
    task_.reset();
    return true;
  }

  // The newest; null until there is one.
  [[nodiscard]] const std::shared_ptr<const Answer>& answer() const { return answer_; }
  [[nodiscard]] InquiryStatus status() const {
    InquiryStatus status{task_ != nullptr, stopped_, 0.0, std::nullopt, trouble_};
    if (!task_) return status;
    status.share = task_->progress.share();
    status.seconds_left = seconds_left(task_->begun, status.share);
    return status;
  }

 private:
  struct Task {
    Progress progress;
    const std::chrono::steady_clock::time_point begun = std::chrono::steady_clock::now();
    std::mutex mutex;  // of what follows
    bool ended = false;
    std::shared_ptr<const Answer> answer;
    std::string trouble;
  };

  static void finish(Task& task, const std::function<Result<Answer>(Progress&)>& work) {
    std::shared_ptr<const Answer> answer;
    std::string trouble;
    try {
      Result<Answer> result = work(task.progress);
      if (!result.ok()) trouble = trouble_words(result.issues());
      if (result.ok()) answer = std::make_shared<const Answer>(std::move(result).value());
    } catch (const std::bad_alloc&) {
      trouble = "There is not enough memory for this: make the wind shorter, or close other programs.";
    } catch (const std::exception& error) {
      trouble = error.what();
    }
    const std::lock_guard lock(task.mutex);
    task.ended = true;
    task.answer = std::move(answer);
    task.trouble = std::move(trouble);
  }

  const std::function<void()> wake_;
  std::shared_ptr<Task> task_;  // that runs
  std::shared_ptr<const Answer> answer_;
  bool stopped_ = false;
  std::string trouble_;
  std::unique_ptr<Worker> worker_;  // last: ends first
};

}  // namespace laywright
