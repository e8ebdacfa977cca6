// Where the guide stood at any moment of a wind.
#pragma once

#include <cstdint>
#include <vector>

#include "lay/guide.h"
#include "plan/lay_plan.h"

namespace laywright {

// Keeps the guide as it was at a few hundred moments, so that any other is a short run away.
class GuideTrack {
 public:
  // The guide of a wind of so many turns, with the scatter that `seed` gives.
  GuideTrack(const Plan& plan, std::uint64_t seed, double turns);

  // The guide itself, at that moment; before the start and after the end of the wind, as there.
  [[nodiscard]] Guide at(double turn) const;
  // x in mm from the left flange face, after so many turns of the spool; before the start and after the end of the
  // wind, as there.
  [[nodiscard]] double x_at(double turn) const;

 private:
  double turns_, spacing_;      // of the wind; between moments
  std::vector<Guide> moments_;  // at 0, spacing_, 2 spacing_, ...
};

}  // namespace laywright
