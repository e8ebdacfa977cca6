#include "plan/size_estimate.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

constexpr double turn = 2.0 * std::numbers::pi;

// A fiber crosses a crest within about this many times sqrt(d / R) rad (derived; 0.1 rad for 0.25 mm on 150 mm).
constexpr double crossover_in_root = 1.8;
constexpr double stations_in_crossover = 4.0;

// At twice this travel a build of coarse, crossed turns still grows taller than on a finer mesh.
constexpr double travel_between_stations_d = 0.125;

// A middling fill, for an outer diameter that need not be exact.
constexpr double expected_fill = 0.8;

// Turns that fit up to this diameter: circles of diameter d, each in a hexagon of area sqrt(3)/2 d^2.
double turns_up_to(double diameter_mm, const PlanDraft& draft) {
  const Spool& spool = draft.spool;
  const double height = std::max(0.0, (diameter_mm - spool.least_barrel_diameter_mm()) / 2.0);
  const double width = spool.inside_width_mm + height * std::tan(spool.flange_taper_rad);
  const double d = draft.fiber.diameter_mm;
  return height * width / (std::sqrt(3.0) / 2.0 * d * d);
}

double expected_outer_diameter(const PlanDraft& draft) {
  const double inner = draft.spool.barrel_diameter_mm;
  const double rim = draft.spool.flange_diameter_mm;
  if (draft.wind.diameter_mm) return std::min(rim, *draft.wind.diameter_mm);
  const double length = draft.wind.length_mm.value_or(draft.wind.turns.value_or(0.0) * std::numbers::pi * inner);
  const double d = draft.fiber.diameter_mm;
  return std::min(rim, std::sqrt(inner * inner + length * d * d / (expected_fill * draft.spool.inside_width_mm)));
}

}  // namespace

double stations_estimate(const PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm;
  const double radius = 0.25 * (draft.spool.barrel_diameter_mm + expected_outer_diameter(draft));
  const double crossover = crossover_in_root * std::sqrt(d / radius);
  double pitch = draft.traverse.pitch_mm;
  for (const WindStep& step : draft.wind.steps) pitch = std::max(pitch, step.pitch_mm.value_or(0.0));
  // The layer below runs the other way: relative travel is two pitches a turn, or within the step of a stepped guide.
  const bool stepped = draft.traverse.motion == Motion::stepped;
  const double haste = stepped ? turn / draft.traverse.step_angle_rad : 1.0;
  return std::max(turn * stations_in_crossover / crossover, 2.0 * haste * pitch / (travel_between_stations_d * d));
}

double turns_estimate(const PlanDraft& draft) {
  const double on_spool = turns_up_to(draft.spool.flange_diameter_mm, draft);
  const Wind& wind = draft.wind;
  if (wind.length_mm)
    return std::min(on_spool, *wind.length_mm / (std::numbers::pi * draft.spool.least_barrel_diameter_mm()));
  if (wind.turns) return std::min(on_spool, *wind.turns);
  return wind.diameter_mm ? std::min(on_spool, turns_up_to(*wind.diameter_mm, draft)) : on_spool;
}

double bytes_estimate(const PlanDraft& draft) {
  return turns_estimate(draft) * stations_estimate(draft) * bytes_per_node;
}

}  // namespace laywright
