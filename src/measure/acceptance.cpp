#include "measure/acceptance.h"

#include <numbers>

#include "base/units.h"

namespace laywright {

namespace {

constexpr double crossed_pitch_d = 4.0;
constexpr double core_of_wire = 2.0 / 3.0;
constexpr double most_modulus_of_yarn_MPa = 20'000.0;

double turns_of_barrel_per_km(const Plan& plan) {
  return mm_per_km / (std::numbers::pi * plan.spool().barrel_diameter_mm);
}

Acceptance usual(const Plan& plan, Product product) {
  Acceptance usual;
  usual.ribbon_d = 1.0;
  usual.payoff_force = 1.5;
  if (product == Product::crossed) {
    usual.valley_d = 6.0;
    usual.unevenness_d = 3.0;
    return usual;
  }
  usual.valley_d = usual.unevenness_d = 1.0;
  usual.open_gaps = product == Product::fiber ? 0.02 : 0.2;
  usual.flange_gap_d = 2.0;
  if (product == Product::yarn) return usual;
  usual.drop_depth_d = 4.0;
  usual.dropped_turns_per_km = 200.0;
  usual.ride_ups_per_km = 300.0;
  if (product == Product::wire) {
    usual.dropped_turns_per_km = usual.ride_ups_per_km = turns_of_barrel_per_km(plan);
    usual.disorder = Grade::marginal;
  }
  return usual;
}

}  // namespace

Product product_of(const Plan& plan) {
  const Fiber& fiber = plan.fiber();
  if (plan.traverse().pitch_mm >= crossed_pitch_d * fiber.diameter_mm) return Product::crossed;
  if (fiber.modulus_MPa && *fiber.modulus_MPa < most_modulus_of_yarn_MPa) return Product::yarn;
  const bool wire = fiber.core_diameter_mm && *fiber.core_diameter_mm >= core_of_wire * fiber.diameter_mm;
  return wire ? Product::wire : Product::fiber;
}

const char* words_for(Product product) {
  switch (product) {
    case Product::fiber: return "a fiber";
    case Product::wire: return "a wire";
    case Product::yarn: return "a yarn";
    case Product::crossed: return "a crossed wind";
  }
  return "";
}

Acceptance acceptance_of(const Plan& plan) {
  const Limits& limits = plan.limits();
  Acceptance accepted = usual(plan, product_of(plan));
  accepted.ridge_d = limits.pile_up_d;
  accepted.rim_clearance_mm = limits.rim_clearance_mm;
  accepted.pull = limits.pull;
  const auto set = [](auto& limit, const std::optional<double>& own) {
    if (own) limit = *own;
  };
  set(accepted.valley_d, limits.valley_d);
  set(accepted.unevenness_d, limits.unevenness_d);
  set(accepted.open_gaps, limits.open_gaps);
  set(accepted.flange_gap_d, limits.flange_gap_d);
  set(accepted.dropped_turns_per_km, limits.dropped_turns_per_km);
  set(accepted.drop_depth_d, limits.drop_depth_d);
  set(accepted.ride_ups_per_km, limits.ride_ups_per_km);
  set(accepted.ribbon_d, limits.ribbon_d);
  set(accepted.payoff_force, limits.payoff_force);
  if (limits.dropped_turns_per_km || limits.ride_ups_per_km) accepted.disorder = Grade::do_not_wind;
  return accepted;
}

}  // namespace laywright
