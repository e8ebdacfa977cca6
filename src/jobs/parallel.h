// Runs independent tasks on several threads. What comes out does not depend on their number, since each task has its
// own place for its result.
#pragma once

#include <cstddef>
#include <functional>

#include "base/progress.h"
#include "jobs/thread.h"

namespace laywright {

// A part of the way of a progress: what is done of the part moves it from `from` to `to`.
struct Stretch {
  Stretch(Progress& whole, double begin = 0.0, double end = 1.0) : progress(whole), from(begin), to(end) {}

  Progress& progress;
  double from, to;
};

// Calls task(i, progress of this task) for each i in [0, count), on at most `threads` threads (at least one); on fewer
// where the system gives no more, and on the caller's own where it gives none. `stretch`
// reports the share of all of them; cancelling its progress cancels the tasks that run, and leaves out those that have not
// begun. An exception of a task (too little memory) ends the others and is thrown again here.
void run_parallel(std::size_t count, int threads, const Stretch& stretch,
                  const std::function<void(std::size_t, Progress&)>& task);

}  // namespace laywright
