#include "random_plans.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <sstream>
#include <stdexcept>

namespace laywright::random_plans {
namespace {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1.0p-53;
  }
  // Evenly over the magnitudes.
  double magnitude(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  bool chance(double share) { return between(0.0, 1.0) < share; }
  int one_of(int count) { return static_cast<int>(engine_() % static_cast<std::uint64_t>(count)); }

 private:
  std::mt19937_64 engine_;
};

void draw_spool(Draw& draw, const Wanted& wanted, PlanDraft& plan) {
  const double d = plan.fiber.diameter_mm;
  Spool& spool = plan.spool;
  spool.barrel_diameter_mm = std::max(20.0 * d, draw.magnitude(20.0, 300.0));
  spool.inside_width_mm = d * draw.magnitude(6.0, 40.0);
  // Some spools are too small for what is wound.
  const double layers = wanted.turns * d / spool.inside_width_mm + 2.0;
  spool.flange_diameter_mm = spool.barrel_diameter_mm + 2.0 * d * layers * draw.between(0.8, 4.0) + 6.0 * d;
  if (draw.chance(0.3)) spool.flange_taper_rad = draw.between(0.0, 0.3);
  if (!wanted.skewed_spool) return;
  if (draw.chance(0.3)) spool.barrel_taper_mm = draw.between(-2.0, 2.0) * d;
  if (draw.chance(0.3)) spool.flange_runout_mm = draw.between(0.0, 1.0) * d;
}

void draw_reversal(Draw& draw, const Wanted& wanted, double stroke, PlanDraft& plan) {
  Traverse& traverse = plan.traverse;
  Reversal& reversal = traverse.reversal;
  const bool stepped = traverse.motion == Motion::stepped;
  reversal.kind = static_cast<ReversalKind>(draw.one_of(stepped ? 2 : 3));
  if (reversal.kind == ReversalKind::dwell) reversal.turns = draw.between(0.1, 2.5);
  if (reversal.kind == ReversalKind::ramp) {
    reversal.turns = std::min(draw.between(0.05, 2.0), 0.9 * stroke / traverse.pitch_mm);
  }
  if (draw.chance(0.25))
    reversal.lost_motion_mm = std::min(draw.between(0.0, 2.0) * traverse.pitch_mm, 0.5 * stroke);
  if (!wanted.scatter) return;
  if (draw.chance(0.25)) reversal.stop_scatter_mm = draw.between(0.0, 0.05) * stroke;
  if (draw.chance(0.25)) traverse.pitch_scatter = draw.between(0.0, 0.1);
  if (draw.chance(0.25))
    traverse.guide_play_mm = draw.between(0.0, 0.2) * std::min(stroke, 5.0 * plan.fiber.diameter_mm);
}

void draw_traverse(Draw& draw, const Wanted& wanted, PlanDraft& plan) {
  const double d = plan.fiber.diameter_mm;
  const double width = plan.spool.inside_width_mm;
  Traverse& traverse = plan.traverse;
  traverse.pitch_mm = d * (draw.chance(0.5) ? draw.between(0.95, 1.3) : draw.magnitude(0.8, 6.0));
  const double most_inward = std::min(3.0 * d, 0.25 * width);
  traverse.left_stop_mm = draw.between(-2.0 * d, most_inward);
  traverse.right_stop_mm = draw.between(-2.0 * d, most_inward);
  traverse.start = draw.chance(0.5) ? Side::left : Side::right;
  traverse.free_length_mm = draw.chance(0.15) ? 0.0 : draw.magnitude(1.0, 500.0);
  if (draw.chance(0.3)) {
    traverse.motion = Motion::stepped;
    traverse.step_angle_rad = draw.between(0.5, 2.0 * std::numbers::pi);
  }
  draw_reversal(draw, wanted, width - traverse.left_stop_mm - traverse.right_stop_mm, plan);
}

void draw_wind(Draw& draw, const Wanted& wanted, PlanDraft& plan) {
  const double d = plan.fiber.diameter_mm;
  const double barrel = plan.spool.barrel_diameter_mm;
  Wind& wind = plan.wind;
  const double turns = wanted.turns * draw.between(0.7, 1.3);
  switch (draw.one_of(3)) {
    case 0: wind.turns = turns; break;
    case 1: wind.length_mm = turns * std::numbers::pi * (barrel + d); break;
    default: {
      const double thickest = barrel + std::max(0.0, plan.spool.barrel_taper_mm);
      const double depth = 2.0 * d * (turns * d / plan.spool.inside_width_mm) + 2.0 * d;
      wind.diameter_mm = std::min(plan.spool.flange_diameter_mm, thickest + depth);
    }
  }
  if (draw.chance(0.3)) {
    WindStep step;
    step.from_layer = 2 + draw.one_of(3);
    step.pitch_mm = plan.traverse.pitch_mm * draw.between(0.9, 1.1);
    step.left_stop_mm = plan.traverse.left_stop_mm + draw.between(-0.2, 0.2) * d;
    wind.steps.push_back(step);
  }
  // sqrt(E I / T) up to a tenth of the barrel: 1 mm copper wire under usual tension on 100 mm.
  if (wanted.bending && draw.chance(0.25)) {
    plan.fiber.core_diameter_mm = 0.9 * d;
    plan.fiber.modulus_MPa = 117'000.0;
    const double inertia = std::numbers::pi / 64.0 * std::pow(0.9 * d, 4.0);
    const double root = draw.between(0.005, 0.1) * barrel;
    wind.tension_N = *plan.fiber.modulus_MPa * inertia / (root * root);
  }
}

}  // namespace

PlanDraft draft(std::uint64_t seed, const Wanted& wanted) {
  Draw draw(seed);
  PlanDraft plan;
  plan.title = "random";
  plan.fiber.diameter_mm = draw.magnitude(0.1, 3.0);
  constexpr double frictions[] = {0.0, 0.1, 0.3, 0.5, 0.6, 0.8, 1.0, Fiber::held};
  plan.fiber.friction = frictions[draw.one_of(8)];
  draw_spool(draw, wanted, plan);
  draw_traverse(draw, wanted, plan);
  draw_wind(draw, wanted, plan);
  if (wanted.diameter_scatter) {
    plan.fiber.diameter_scatter_mm = draw.between(0.0, Fiber::most_scatter) * plan.fiber.diameter_mm;
    plan.fiber.scatter_length_mm = draw.magnitude(0.1, 20.0) * std::numbers::pi * plan.spool.barrel_diameter_mm;
  }
  return plan;
}

Plan plan_of(const PlanDraft& draft) {
  Result<Plan> plan = check(draft);
  if (plan.ok()) return std::move(plan).value();
  std::string text;
  for (const Issue& issue : plan.issues()) text += to_text(issue) + "\n";
  throw std::invalid_argument("the random plan is not sound: " + text);
}

Build laid(const Plan& plan, std::uint64_t seed, double fidelity) {
  Progress progress;
  return lay(plan, {seed, fidelity}, progress).value();
}

std::string in_words(const PlanDraft& plan) {
  const Spool& spool = plan.spool;
  const Traverse& traverse = plan.traverse;
  const Reversal& reversal = traverse.reversal;
  const double d = plan.fiber.diameter_mm;
  std::ostringstream out;
  out.precision(17);
  out << "d " << d << " mu " << plan.fiber.friction << " barrel " << spool.barrel_diameter_mm << " flange "
      << spool.flange_diameter_mm << " width " << spool.inside_width_mm << " flange_taper " << spool.flange_taper_rad
      << " barrel_taper " << spool.barrel_taper_mm << " runout " << spool.flange_runout_mm
      << (traverse.motion == Motion::stepped ? " stepped " : " continuous ") << traverse.step_angle_rad << " pitch "
      << traverse.pitch_mm << " stops " << traverse.left_stop_mm << " " << traverse.right_stop_mm << " start "
      << (traverse.start == Side::left ? "left" : "right") << " free " << traverse.free_length_mm << " play "
      << traverse.guide_play_mm << " pitch_scatter " << traverse.pitch_scatter << " reversal "
      << static_cast<int>(reversal.kind) << " " << reversal.turns << " lost " << reversal.lost_motion_mm
      << " scatter " << reversal.stop_scatter_mm << " turns " << plan.wind.turns.value_or(0.0) << " length "
      << plan.wind.length_mm.value_or(0.0) << " diameter " << plan.wind.diameter_mm.value_or(0.0) << " tension "
      << plan.wind.tension_N.value_or(0.0) << " steps " << plan.wind.steps.size() << " diameter scatter "
      << plan.fiber.diameter_scatter_mm << " over " << plan.fiber.scatter_length_mm;
  return out.str();
}

}  // namespace laywright::random_plans
