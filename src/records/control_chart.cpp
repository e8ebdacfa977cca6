#include "records/control_chart.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace laywright {

bool ControlChart::in_control() const {
  return std::none_of(points.begin(), points.end(),
                      [](const ControlPoint& each) { return each.beyond || each.range_beyond || each.run; });
}

ControlChart control_chart(const std::vector<double>& values) {
  ControlChart chart;
  if (values.empty()) return chart;
  const auto count = static_cast<double>(values.size());
  chart.mean = std::accumulate(values.begin(), values.end(), 0.0) / count;
  for (std::size_t i = 1; i < values.size(); ++i)
    chart.mean_range += std::abs(values[i] - values[i - 1]) / (count - 1.0);
  chart.lower = chart.mean - limits_per_range * chart.mean_range;
  chart.upper = chart.mean + limits_per_range * chart.mean_range;
  chart.range_limit = range_limit_per_range * chart.mean_range;
  // Values that are all alike lie at their mean but for its last bits.
  const double slack = 1e-12 * std::max(std::abs(chart.mean), chart.mean_range);
  std::size_t run = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    ControlPoint point;
    point.value = values[i];
    point.moving_range = i == 0 ? 0.0 : std::abs(values[i] - values[i - 1]);
    const double off = values[i] - chart.mean;
    point.side = off > slack ? 1 : off < -slack ? -1 : 0;
    point.beyond = values[i] < chart.lower - slack || values[i] > chart.upper + slack;
    point.range_beyond = point.moving_range > chart.range_limit + slack;
    const bool goes_on = i > 0 && point.side != 0 && point.side == chart.points.back().side;
    run = point.side == 0 ? 0 : goes_on ? run + 1 : 1;
    point.run = run >= run_that_tells;
    chart.points.push_back(point);
  }
  return chart;
}

}  // namespace laywright
