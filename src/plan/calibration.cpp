#include "plan/calibration.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace laywright {
namespace {

Issue refused(std::string what) {
  Issue issue;
  issue.what = std::move(what);
  return issue;
}

double mean(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

}  // namespace

Result<Calibration> calibrate(const std::vector<DialPoint>& points, DialLaw law) {
  if (points.size() < 2) return refused("needs two readings or more, as far apart as the dial goes");
  std::vector<double> units, values;
  for (const DialPoint& point : points) {
    const auto same = [&](const DialPoint& other) { return &other != &point && other.reading == point.reading; };
    if (std::any_of(points.begin(), points.end(), same))
      return refused(
          fmt::format("has the reading {:.10g} twice; give readings apart from each other", point.reading));
    if (law == DialLaw::inverse && point.reading == 0.0)
      return refused("a reading of 0 has no value by the inverse law");
    units.push_back(law == DialLaw::inverse ? 1.0 / point.reading : point.reading);
    values.push_back(point.value);
  }
  const double unit = mean(units), value = mean(values);
  double with = 0.0, square = 0.0;
  for (std::size_t i = 0; i < units.size(); ++i) {
    with += (units[i] - unit) * (values[i] - value);
    square += (units[i] - unit) * (units[i] - unit);
  }
  Calibration found;
  found.per_unit = with / square;
  found.at_zero = value - found.per_unit * unit;
  if (found.per_unit == 0.0 || !std::isfinite(found.per_unit))
    return refused(
        "measures the same at all readings: that dial sets nothing, or the readings are too near to each other");
  for (std::size_t i = 0; i < units.size(); ++i) {
    found.off.push_back(values[i] - (found.at_zero + found.per_unit * units[i]));
    found.greatest_off = std::max(found.greatest_off, std::abs(found.off.back()));
  }
  return found;
}

}  // namespace laywright
