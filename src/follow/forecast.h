// What a spool will be: the wind laid to its end with what was found, and with settings that change on the way.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "advise/robust.h"
#include "advise/trial.h"
#include "lay/midwind_change.h"

namespace laywright {

struct Forecast {
  Plan plan;             // with what was found
  MidwindChange change;  // from the last reading on
  // One wind of it, as it may be; the verdict is over several draws.
  std::shared_ptr<const Build> build;
  std::shared_ptr<const Measurements> measurements;
  std::shared_ptr<const TakeupRun> run;
  Outcome outcome;
  WindVerdict verdict;
  double cost = 0.0;  // mean over the draws, of merit.h: less is better
};

// A verdict over fewer than usual: each is a whole wind, and somebody waits at the machine.
inline constexpr int forecast_draws = 3;

// Winds of one plan, each with another change, in their order. None of a wind that could not be laid; all none when cancelled.
[[nodiscard]] std::vector<std::optional<Forecast>> forecast(const Plan& plan,
                                                            const std::vector<MidwindChange>& changes,
                                                            const LaySettings& settings, int draws, int threads,
                                                            const Stretch& stretch);

}  // namespace laywright
