#include <algorithm>
#include <cmath>

#include "lay/lay.h"
#include "plan/size_estimate.h"

namespace laywright {
namespace {

constexpr int multiple_of = 8;
constexpr double least_stations = 32.0;

}  // namespace

int stations_needed(const Plan& plan) {
  const double needed = std::max(stations_estimate(plan.draft()), least_stations);
  return multiple_of * static_cast<int>(std::ceil(needed / multiple_of));
}

}  // namespace laywright
