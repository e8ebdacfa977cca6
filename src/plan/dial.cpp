#include "plan/dial.h"

#include <algorithm>
#include <cmath>

#include "plan/counter_length.h"

namespace laywright {
namespace {

// Share of a step within which a value is what the dial has, but for rounding.
constexpr double same_step = 1e-6;
constexpr double places = 1e9;

bool rises(const std::vector<DialPoint>& points) { return points.back().value > points.front().value; }

double between(double from, double to, double share) { return from + (to - from) * share; }

double on_points(const std::vector<DialPoint>& points, double reading) {
  const auto after = std::find_if(points.begin() + 1, points.end() - 1,
                                  [&](const DialPoint& point) { return point.reading >= reading; });
  const DialPoint &a = *(after - 1), &b = *after;
  return between(a.value, b.value, (reading - a.reading) / (b.reading - a.reading));
}

std::optional<double> on_points_at(const std::vector<DialPoint>& points, double value) {
  const auto [low, high] = std::minmax(points.front().value, points.back().value);
  // A value that was rounded at the end is still the end.
  const double slack = (high - low) / places;
  if (value < low - slack || value > high + slack) return std::nullopt;
  const bool up = rises(points);
  const auto after = std::find_if(points.begin() + 1, points.end() - 1, [&](const DialPoint& point) {
    return up ? point.value >= value : point.value <= value;
  });
  const DialPoint &a = *(after - 1), &b = *after;
  const double share = std::clamp((value - a.value) / (b.value - a.value), 0.0, 1.0);
  return between(a.reading, b.reading, share);
}

// Readings between which the dial can be set.
struct Ends {
  double low, high;
};
Ends ends_of(const Dial& dial) {
  Ends ends{dial.least.value_or(-HUGE_VAL), dial.greatest.value_or(HUGE_VAL)};
  if (dial.points.empty()) return ends;
  return {std::max(ends.low, dial.points.front().reading), std::min(ends.high, dial.points.back().reading)};
}

// The nearest whole step between the ends; none if there is none.
std::optional<double> whole_step(double reading, double step, const Ends& ends) {
  const double slack = same_step * step;
  double nearest = tidy(std::round(reading / step) * step);
  if (nearest > ends.high + slack) nearest = tidy(nearest - step);
  if (nearest < ends.low - slack) nearest = tidy(nearest + step);
  if (nearest > ends.high + slack || nearest < ends.low - slack) return std::nullopt;
  return nearest;
}

}  // namespace

double tidy(double value) { return std::round(value * places) / places; }

const std::vector<DialPlace>& dial_places() {
  static const std::vector<DialPlace> all = {{"pitch", "traverse.pitch", "pitch"},
                                             {"left_stop", "traverse.left_stop", "left stop"},
                                             {"right_stop", "traverse.right_stop", "right stop"},
                                             {"reversal", "traverse.reversal.turns", "turning back"},
                                             {"tension", "wind.tension", "tension"},
                                             {"line_speed", "wind.line_speed", "line speed"},
                                             {"speed_ceiling", "takeup.speed_ceiling", "speed ceiling"}};
  return all;
}

double value_at_reading(const Dial& dial, double reading) {
  if (!dial.points.empty()) return on_points(dial.points, reading);
  return dial.at_zero + *dial.per_unit * (dial.law == DialLaw::inverse ? 1.0 / reading : reading);
}

std::optional<double> reading_at_value(const Dial& dial, double value) {
  if (!dial.points.empty()) return on_points_at(dial.points, value);
  const double units = (value - dial.at_zero) / *dial.per_unit;
  if (dial.law == DialLaw::proportional) return units;
  if (units == 0.0) return std::nullopt;
  return 1.0 / units;
}

DialAnswer set_dial(const Dial& dial, double value) {
  const std::optional<double> reading = reading_at_value(dial, value);
  if (!reading) return {dial.points.empty() ? DialReach::out_of_reach : DialReach::not_measured, {}};
  const Ends ends = ends_of(dial);
  const double beside = dial.step ? 0.5 * *dial.step : same_step * std::max(1.0, std::abs(*reading));
  if (*reading < ends.low - beside || *reading > ends.high + beside) return {DialReach::out_of_reach, {}};
  if (!dial.step) return {DialReach::settable, {std::clamp(*reading, ends.low, ends.high), value}};
  const std::optional<double> whole = whole_step(*reading, *dial.step, ends);
  if (!whole || (dial.law == DialLaw::inverse && *whole == 0.0)) return {DialReach::out_of_reach, {}};
  const bool same = std::abs(*whole - *reading) <= same_step * *dial.step;
  return {DialReach::settable, {*whole, same ? value : tidy(value_at_reading(dial, *whole))}};
}

DialRange range_of(const Dial& dial) {
  const Ends ends = ends_of(dial);
  std::optional<double> at_low, at_high;
  const auto value = [&](double reading) -> std::optional<double> {
    if (!std::isfinite(reading) || (dial.law == DialLaw::inverse && reading == 0.0)) return std::nullopt;
    return value_at_reading(dial, reading);
  };
  at_low = value(ends.low);
  at_high = value(ends.high);
  const bool falls =
      dial.points.empty() ? (*dial.per_unit < 0.0) != (dial.law == DialLaw::inverse) : !rises(dial.points);
  return falls ? DialRange{at_high, at_low} : DialRange{at_low, at_high};
}

CounterReading counter_reading(const Counter& counter, double length_mm) {
  const double per_count_mm = length_at_reading(counter, 1.0);
  const double reading = tidy(std::round(length_mm / per_count_mm / counter.step) * counter.step);
  return {reading, length_at_reading(counter, reading)};
}

}  // namespace laywright
