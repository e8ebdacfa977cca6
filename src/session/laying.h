// Lays plans in the background: a first look within a moment, then the full build. The newest plan wins. What the machine
// does over a wind follows each build, so that no picture waits for it.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "base/progress.h"
#include "desk/passes.h"
#include "desk/wound.h"
#include "jobs/errands.h"
#include "jobs/latest.h"
#include "payoff/payoff.h"

namespace laywright {

struct LayingStatus {
  bool busy = false;
  bool stopped = false;                // by the person, before the full build was ready
  Pass pass;                           // that is being laid
  double share = 0.0;                  // of this pass that is done, 0 to 1
  std::optional<double> seconds_left;  // of this pass, an estimate; none while there is too little to go by
  std::string trouble;                 // why the newest plan could not be laid; empty: nothing wrong
};

class Laying {
 public:
  // `wake` is called from other threads whenever there is something to take. `chores` frees builds that nobody
  // holds any more. `drawn_off`: of a whole build, its source knows the pull of this payoff when it is given out.
  Laying(std::function<void()> wake, std::shared_ptr<ErrandQueue> chores,
         std::optional<DrawOff> drawn_off = std::nullopt);
  // Stops what runs and waits for it.
  ~Laying();
  Laying(const Laying&) = delete;
  Laying& operator=(const Laying&) = delete;

  // Starts on this plan; older work is given up, but not two first looks in a row: while a slider is dragged, plans
  // come faster than they are laid, and there must be something to see. Returns its revision. Returns at once, as all
  // that follow.
  std::uint64_t lay(const Plan& plan, std::uint64_t seed);

  // Gives up what runs; what was laid stays.
  void stop();

  // The newest build since the last call; null if there is none.
  [[nodiscard]] WoundPtr take();

  // True once after the machine's side of a build has come.
  [[nodiscard]] bool take_takeup_news();

  [[nodiscard]] LayingStatus status() const;

 private:
  using Clock = std::chrono::steady_clock;
  struct Job;

  // Null when nobody wants it.
  WoundPtr run_pass(const std::shared_ptr<Job>& job, std::size_t pass);
  void run_rest(const std::shared_ptr<Job>& job);
  void give_up_older();
  void finish_look(const std::shared_ptr<Job>& job);
  // Null when stopped.
  [[nodiscard]] std::unique_ptr<const Wound> wind(Job& job, const Pass& pass) const;
  WoundPtr publish(const Job& job, std::unique_ptr<const Wound> wound);
  void add_takeup(Job& job, const Wound& wound);
  void fail(const Job& job, const Issue& trouble);
  [[nodiscard]] Task task_of(const std::shared_ptr<Job>& job, std::function<void()> work);
  [[nodiscard]] static double share_of(const Job& job);

  const std::function<void()> wake_;
  const std::shared_ptr<ErrandQueue> chores_;
  const std::optional<DrawOff> drawn_off_;

  mutable std::mutex mutex_;  // of all that follows but the last two
  std::uint64_t revision_ = 0;
  std::shared_ptr<Job> job_;      // the newest
  std::shared_ptr<Job> looking_;  // the one whose first look runs; null when none does
  bool gave_up_look_ = false;     // the last first look was not finished
  WoundPtr fresh_;
  bool takeup_news_ = false;
  LayCost cost_;

  // Two, so that the first look need not wait until a long measurement has noticed that it is no longer wanted. The first
  // ends first: it hands over to the other.
  Latest rest_, first_;
};

}  // namespace laywright
