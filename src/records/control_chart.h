// Whether a machine is as it was: a control chart of individual values.
//
// Mean and limits follow from the values themselves: mean +- 2.66 times the mean moving range, and 3.267 times it for the
// moving ranges, where 2.66 = 3 / 1.128 and 1.128 is the mean range of two values of a normal distribution with sigma 1
// (d2 for n = 2; 3.267 = D4 for n = 2). Source: Montgomery, Introduction to Statistical Quality Control; from memory. A run of
// eight on one side of the mean: the Western Electric rules; from memory.
#pragma once

#include <cstddef>
#include <vector>

namespace laywright {

inline constexpr double limits_per_range = 2.66;
inline constexpr double range_limit_per_range = 3.267;
inline constexpr std::size_t run_that_tells = 8;
// Limits of fewer values are rough themselves. Common practice, no source.
inline constexpr std::size_t values_for_limits = 20;

struct ControlPoint {
  double value = 0.0;
  double moving_range = 0.0;  // from the value before; 0 of the first
  bool beyond = false;        // a limit
  bool range_beyond = false;  // the limit of moving ranges
  int side = 0;               // of the mean: +1 over, -1 under
  bool run = false;           // ends a run of eight or more on one side
};

struct ControlChart {
  double mean = 0.0, mean_range = 0.0;
  double lower = 0.0, upper = 0.0;  // limits
  double range_limit = 0.0;
  std::vector<ControlPoint> points;

  [[nodiscard]] bool in_control() const;
};

// In the order of time. Of one value there are no limits: both are the value. A value at a limit, or at the mean, is in control.
[[nodiscard]] ControlChart control_chart(const std::vector<double>& values);

}  // namespace laywright
