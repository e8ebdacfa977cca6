// Something that a panel shows and that takes longer to make than a frame may: made in the background, always the newest
// that was asked for. What was made before stays in sight until then, and where the new one has a trouble.
#pragma once

#include <functional>
#include <optional>
#include <utility>

#include "jobs/latest_job.h"

namespace laywright {

template <class Made>
class PanelWork {
 public:
  // `what` stands in the words of a trouble: "the map".
  explicit PanelWork(const char* what) : job_(what) {}

  // `wake` is called on another thread when it is made. An older one that is being made comes, too: while something is
  // dragged, there is something to see.
  void ask(std::function<Made()> make, std::function<void()> wake) {
    trouble_.clear();
    job_.ask([make = std::move(make)](Progress&) { return JobResult<Made>(make()); },
             [wake = std::move(wake)] {
               if (wake) wake();
             },
             Older::finished);
  }

  // True: something has come that has not been taken yet.
  [[nodiscard]] bool ready() const { return job_.ready(); }
  [[nodiscard]] std::optional<Made> take() {
    std::optional<JobResult<Made>> ended = job_.take();
    if (!ended) return std::nullopt;
    trouble_ = ended->trouble();
    return ended->done() ? std::optional<Made>(std::move(ended->value())) : std::nullopt;
  }
  // Why the last that was to be taken was not made; empty: it was.
  [[nodiscard]] const Issues& trouble() const { return trouble_; }

 private:
  Issues trouble_;
  LatestJob<Made> job_;
};

}  // namespace laywright
