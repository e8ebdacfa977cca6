#include "plan/size_estimate.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

double smaller_barrel(const Spool& spool) {
  return std::min(spool.barrel_diameter_mm, spool.barrel_diameter_mm + spool.barrel_taper_mm);
}

// Turns that fit up to this diameter: circles of diameter d, each in a hexagon of area sqrt(3)/2 d^2.
double turns_up_to(double diameter_mm, const PlanDraft& draft) {
  const Spool& spool = draft.spool;
  const double height = std::max(0.0, (diameter_mm - smaller_barrel(spool)) / 2.0);
  const double width = spool.inside_width_mm + height * std::tan(spool.flange_taper_rad);
  const double d = draft.fiber.diameter_mm;
  return height * width / (std::sqrt(3.0) / 2.0 * d * d);
}

}  // namespace

double stations_estimate(const PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm;
  double pitch = draft.traverse.pitch_mm;
  for (const WindStep& step : draft.wind.steps) pitch = std::max(pitch, step.pitch_mm.value_or(0.0));
  const bool stepped = draft.traverse.motion == Motion::stepped;
  const double haste = stepped ? 2.0 * std::numbers::pi / draft.traverse.step_angle_rad : 1.0;
  const double diameter = draft.spool.barrel_diameter_mm + d;
  return std::max(14.0 / std::sqrt(2.0 * d / diameter), 8.0 * haste * pitch / d);
}

double turns_estimate(const PlanDraft& draft) {
  const double on_spool = turns_up_to(draft.spool.flange_diameter_mm, draft);
  const Wind& wind = draft.wind;
  if (wind.length_mm) return std::min(on_spool, *wind.length_mm / (std::numbers::pi * smaller_barrel(draft.spool)));
  if (wind.turns) return std::min(on_spool, *wind.turns);
  return wind.diameter_mm ? std::min(on_spool, turns_up_to(*wind.diameter_mm, draft)) : on_spool;
}

double bytes_estimate(const PlanDraft& draft) {
  return turns_estimate(draft) * stations_estimate(draft) * bytes_per_node;
}

}  // namespace laywright
