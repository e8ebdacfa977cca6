#include "jobs/seconds_left.h"

namespace laywright {

std::optional<double> seconds_left(std::chrono::steady_clock::time_point begun, double share,
                                   const EstimateFrom& from) {
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  if (share < from.share || seconds < from.seconds) return std::nullopt;
  return seconds * (1.0 - share) / share;
}

}  // namespace laywright
