// A question that takes long to answer, worked on while the window goes on. The newest one counts, and the newest answer
// stays until there is another.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "jobs/latest_job.h"
#include "jobs/seconds_left.h"

namespace laywright {

struct InquiryStatus {
  bool busy = false;
  bool stopped = false;                // the last one, by the person
  double share = 0.0;                  // done, 0 to 1
  std::optional<double> seconds_left;  // an estimate; none while there is too little to go by
  std::string trouble;                 // why there is no answer; empty: nothing wrong
};

// One thread uses it.
template <class Answer>
class Inquiry {
 public:
  // `what` as of LatestJob. `wake` is called on another thread when there is something to take.
  Inquiry(std::string what, std::function<void()> wake) : wake_(std::move(wake)), job_(std::move(what)) {}

  // Returns at once; an older one is given up. Its answer stays until there is a newer one.
  void ask(typename LatestJob<Answer>::Work work) {
    stopped_ = false;
    trouble_.clear();
    job_.ask(std::move(work), wake_);
  }
  void stop() {
    if (!job_.busy()) return;
    job_.stop();
    stopped_ = true;
  }
  void forget() {
    answer_.reset();
    stopped_ = false;
    trouble_.clear();
  }

  // Takes what has come since: true if something has.
  bool poll() {
    std::optional<JobResult<Answer>> ended = job_.take();
    if (!ended) return false;
    if (ended->done()) answer_ = std::make_shared<const Answer>(std::move(ended->value()));
    trouble_ = trouble_words(ended->trouble());
    return true;
  }

  // The newest; null until there is one.
  [[nodiscard]] const std::shared_ptr<const Answer>& answer() const { return answer_; }
  [[nodiscard]] InquiryStatus status() const {
    return {job_.busy(), stopped_, job_.share(), seconds_left(job_.begun(), job_.share()), trouble_};
  }

 private:
  const std::function<void()> wake_;
  std::shared_ptr<const Answer> answer_;
  bool stopped_ = false;
  std::string trouble_;
  LatestJob<Answer> job_;
};

}  // namespace laywright
