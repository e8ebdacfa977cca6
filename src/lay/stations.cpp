#include <algorithm>
#include <cmath>
#include <numbers>

#include "lay/lay.h"

namespace laywright {
namespace {

// A fiber crosses a crest within about this many times sqrt(d / R) rad (derived; 0.1 rad for 0.25 mm on 150 mm).
constexpr double crossover_in_root = 1.8;
constexpr double stations_in_crossover = 4.0;
constexpr double travel_between_stations_d = 0.25;
constexpr int multiple_of = 8;
constexpr int least_stations = 32;

// Radius of the full spool if the fiber filled it as hexagonally packed circles would at nine tenths.
double expected_outer_radius(const Plan& plan) {
  const double inner = 0.5 * plan.spool().barrel_diameter_mm;
  const double rim = 0.5 * plan.spool().flange_diameter_mm;
  const double d = plan.fiber().diameter_mm;
  if (plan.wind().diameter_mm) return std::min(rim, 0.5 * *plan.wind().diameter_mm);
  const double width = plan.spool().inside_width_mm;
  constexpr double fill = 0.8;
  double outer = inner;
  if (plan.wind().turns) outer = inner + *plan.wind().turns * d * d * 0.25 * std::numbers::pi / (fill * width);
  if (plan.wind().length_mm) {
    const double area = *plan.wind().length_mm * d * d * 0.25 * std::numbers::pi / (fill * width);
    outer = std::sqrt(inner * inner + area / std::numbers::pi);
  }
  return std::min(rim, outer);
}

}  // namespace

int stations_needed(const Plan& plan) {
  const double d = plan.fiber().diameter_mm;
  const double radius = 0.5 * (0.5 * plan.spool().barrel_diameter_mm + expected_outer_radius(plan));
  const double crossover = crossover_in_root * std::sqrt(d / radius);
  double pitch = plan.traverse().pitch_mm;
  for (const WindStep& step : plan.wind().steps) pitch = std::max(pitch, step.pitch_mm.value_or(0.0));
  // The layer below runs the other way: relative travel is two pitches a turn, or within the step of a stepped guide.
  double travel = 2.0 * pitch;
  if (plan.traverse().motion == Motion::stepped) travel *= 2.0 * std::numbers::pi / plan.traverse().step_angle_rad;
  const double for_crossover = 2.0 * std::numbers::pi * stations_in_crossover / crossover;
  const double for_travel = travel / (travel_between_stations_d * d);
  const double needed = std::max({for_crossover, for_travel, static_cast<double>(least_stations)});
  return multiple_of * static_cast<int>(std::ceil(needed / multiple_of));
}

}  // namespace laywright
