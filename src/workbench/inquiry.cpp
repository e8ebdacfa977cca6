#include "workbench/inquiry.h"

namespace laywright {

std::optional<double> seconds_left(std::chrono::steady_clock::time_point begun, double share) {
  // Before this, an estimate would jump about.
  constexpr double least_share = 0.05, least_seconds = 1.0;
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  if (share < least_share || seconds < least_seconds) return std::nullopt;
  return seconds * (1.0 - share) / share;
}

}  // namespace laywright
