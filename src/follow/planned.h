// Readings beside what the plan would have had there, and whether they are as far off as a wind on plan may read.
#pragma once

#include <optional>
#include <vector>

#include "advise/fit_model.h"
#include "base/result.h"

namespace laywright {

// A reading and its place in the plan. Values in mm, or turns, as the observation says.
struct Compared {
  Observation observation;  // with the error of the reading
  double planned = 0.0;     // mean of the plan's draws
  double scatter = 0.0;     // one sigma of these
  // Three and a half sigmas of both, which chance exceeds once in 2000 readings (normal distribution): a wind has some dozens.
  double tolerance = 0.0;

  [[nodiscard]] double off() const { return observation.measured - planned; }
  [[nodiscard]] double off_sigmas() const;
  [[nodiscard]] bool beyond() const;  // off by more than the tolerance
};

struct Beside {
  std::vector<Compared> readings;  // in the order of observations_of()
  // Chance that a wind on plan reads as far off as this in all its readings together: chi square of what is off, with the
  // errors of the readings and the covariance of the plan's draws.
  double chance = 1.0;

  // No reading is beyond its tolerance, and all together are off by what comes more often than once in 200 winds.
  [[nodiscard]] bool on_plan() const;
  // The one that is off by most, in sigmas. Precondition: there is one.
  [[nodiscard]] const Compared& most_off() const;
};

// Enough for a sigma to within a quarter (1 / sqrt(2 (n - 1)), of the normal distribution).
inline constexpr int usual_plan_draws = 9;

// Lays draws of the plan (draws.h) as far as the readings go. Errors: nothing to compare, a plan that cannot be laid so far, cancelled (text
// `stopped_text`).
[[nodiscard]] Result<Beside> beside_plan(const Plan& plan, const AsWound& wound, const ReadingErrors& errors,
                                         const LaySettings& lay, int draws, int threads, const Stretch& stretch);

}  // namespace laywright
