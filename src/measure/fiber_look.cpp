#include "measure/fiber_look.h"

#include <numbers>
#include <optional>

#include "measure/acceptance.h"

namespace laywright {
namespace {

// Between copper, 8.9 g/cm^3 and 117 GPa, and steel, 7.85 and 200; an aluminium wire has 2.7 and 70. Handbook values,
// from memory.
constexpr double steel_from_MPa = 160'000.0, copper_from_MPa = 90'000.0;
constexpr double copper_from_density = 8.3, steel_from_density = 6.5;

// Mass over volume, g/cm^3; of a wire that has a coat, over the core's.
std::optional<double> density_of(const Fiber& fiber) {
  if (!fiber.linear_mass_g_per_km) return std::nullopt;
  const double d = fiber.core_diameter_mm.value_or(fiber.diameter_mm);
  return *fiber.linear_mass_g_per_km / (0.25 * std::numbers::pi * d * d * 1000.0);
}

FiberLook look_of_wire(const Fiber& fiber) {
  const bool coated = fiber.core_diameter_mm && *fiber.core_diameter_mm < 0.995 * fiber.diameter_mm;
  const FiberLook copper = coated ? FiberLook::enamelled : FiberLook::copper;
  if (fiber.modulus_MPa) return *fiber.modulus_MPa >= steel_from_MPa ? FiberLook::steel : copper;
  const std::optional<double> density = density_of(fiber);
  return density && *density >= steel_from_density && *density < copper_from_density ? FiberLook::steel : copper;
}

FiberLook usual_look(const Plan& plan) {
  const Fiber& fiber = plan.fiber();
  const std::optional<double> density = density_of(fiber);
  const bool wire = fiber.core_diameter_mm && *fiber.core_diameter_mm > 0.8 * fiber.diameter_mm;
  const bool metal = (fiber.modulus_MPa && *fiber.modulus_MPa >= copper_from_MPa) ||
                     ((wire || !fiber.core_diameter_mm) && density && *density >= steel_from_density);
  switch (product_of(plan)) {
    case Product::wire: return look_of_wire(fiber);
    case Product::yarn: return FiberLook::yarn;
    case Product::crossed:
      if (!metal && !fiber.core_diameter_mm) return FiberLook::yarn;
      break;
    case Product::fiber: break;
  }
  return metal ? look_of_wire(fiber) : FiberLook::coated;
}

}  // namespace

FiberLook look_of(const Plan& plan) {
  return plan.fiber().look == FiberLook::usual ? usual_look(plan) : plan.fiber().look;
}

}  // namespace laywright
