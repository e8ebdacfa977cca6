#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "plan/checker.h"

namespace laywright {
namespace {

// Taper of the barrel as a share of its width: a half angle of some 27 degrees.
constexpr double most_cone = 1.0;
// Run-out as a share of the flange's diameter: the tangent of its lean, some 11 degrees.
constexpr double most_lean = 0.2;

void check_flange(Checker& c) {
  if (!c.sound({"spool.barrel_diameter", "spool.flange_diameter"})) return;
  const Spool& spool = c.draft().spool;
  const std::string barrel = c.shown("spool.barrel_diameter");
  if (spool.flange_diameter_mm <= spool.barrel_diameter_mm) {
    return c.error("spool.flange_diameter", fmt::format("the flange must be larger than the barrel, {}", barrel));
  }
  const double d = c.draft().fiber.diameter_mm;
  if (c.sound({"fiber.diameter"}) && spool.flange_diameter_mm < spool.barrel_diameter_mm + 2.0 * d) {
    c.error("spool.flange_diameter",
            fmt::format("the flange does not stand out from the barrel, {}, by even one fiber, {}", barrel,
                        c.shown("fiber.diameter")),
            "at least " + c.in_unit_of("spool.flange_diameter", spool.barrel_diameter_mm + 2.0 * d));
  }
}

void check_barrel_taper(Checker& c) {
  if (!c.sound({"spool.barrel_diameter", "spool.flange_diameter", "spool.barrel_taper", "spool.inside_width"})) {
    return;
  }
  const Spool& spool = c.draft().spool;
  const double right = spool.barrel_diameter_mm + spool.barrel_taper_mm;
  if (right <= 0.0) {
    c.error("spool.barrel_taper",
            fmt::format("nothing is left of the barrel, {}, at its right end", c.shown("spool.barrel_diameter")));
  } else if (right >= spool.flange_diameter_mm) {
    c.error("spool.barrel_taper", fmt::format("the right end of the barrel becomes {}, as large as the flange or "
                                              "larger; check the taper's sign and size",
                                              c.in_unit_of("spool.barrel_taper", right)));
  } else if (c.sound({"fiber.diameter"}) && spool.flange_diameter_mm < right + 2.0 * c.draft().fiber.diameter_mm) {
    c.error("spool.barrel_taper",
            fmt::format("the right end of the barrel becomes {}, which leaves no room under the "
                        "rim for even one fiber, {}",
                        c.in_unit_of("spool.barrel_taper", right), c.shown("fiber.diameter")));
  } else if (const double most = most_cone * spool.inside_width_mm; std::abs(spool.barrel_taper_mm) > most) {
    c.error("spool.barrel_taper", "makes a barrel so conical that no turn would hold on it; check the units",
            fmt::format("{} to {}", c.in_unit_of("spool.barrel_taper", -most),
                        c.in_unit_of("spool.barrel_taper", most)));
  }
}

// The run-out at which the flanges leave no room for the fiber at this radius. Each face leans inward by half its
// run-out at the rim, and below it in proportion to the radius; both may do so at the same place.
double closing_runout(const PlanDraft& draft, double radius_mm) {
  const Spool& spool = draft.spool;
  const double opening = std::tan(spool.flange_taper_rad);
  const double barrel = spool.barrel_diameter_mm + spool.barrel_taper_mm / 2.0;  // mean of both ends
  const double wide = spool.inside_width_mm + (2.0 * radius_mm - barrel) * opening;
  const double room = wide - draft.fiber.diameter_mm * std::hypot(1.0, opening);
  return room * spool.flange_diameter_mm / (2.0 * radius_mm);
}

void check_room_between_flanges(Checker& c) {
  if (!c.sound({"spool.barrel_diameter", "spool.barrel_taper", "spool.flange_diameter", "spool.inside_width",
                "spool.flange_taper", "spool.flange_runout", "fiber.diameter"})) {
    return;
  }
  const Spool& spool = c.draft().spool;
  const double on_barrel = (spool.least_barrel_diameter_mm() + c.draft().fiber.diameter_mm) / 2.0;
  // What is open between straight faces is least at one end.
  const double most =
      std::min(closing_runout(c.draft(), on_barrel), closing_runout(c.draft(), spool.flange_diameter_mm / 2.0));
  const double leans = most_lean * spool.flange_diameter_mm;
  if (spool.flange_runout_mm > leans) {
    c.error("spool.flange_runout", "is more than any flange is out of square; check the units",
            "up to " + c.in_unit_of("spool.flange_runout", leans));
  } else if (most <= 0.0) {
    c.error("spool.flange_taper",
            "flanges that open so far leave the fiber no room beside the thin end of the barrel");
  } else if (spool.flange_runout_mm >= most) {
    c.error("spool.flange_runout", "flanges so far out of square close the spool",
            "less than " + c.in_unit_of("spool.flange_runout", most));
  }
}

void check_barrel_under_fiber(Checker& c) {
  if (!c.sound({"spool.barrel_diameter", "spool.barrel_taper", "fiber.diameter"})) return;
  if (c.draft().spool.least_barrel_diameter_mm() >= c.draft().fiber.diameter_mm) return;
  c.error("spool.barrel_diameter",
          fmt::format("the barrel is thinner than the fiber, {}, which cannot be bent round it; check the units",
                      c.shown("fiber.diameter")));
}

void check_fiber_in_spool(Checker& c) {
  if (!c.sound({"fiber.diameter", "spool.inside_width"})) return;
  const double width = c.draft().spool.inside_width_mm;
  const double d = c.draft().fiber.diameter_mm;
  // The grid on which builds are stored must stay far finer than the fiber.
  constexpr double most_side_by_side = 4000.0;
  if (d > width) {
    c.error("fiber.diameter",
            fmt::format("the fiber is wider than the spool inside, {}", c.shown("spool.inside_width")));
  } else if (width > most_side_by_side * d) {
    c.error(
        "spool.inside_width",
        fmt::format("is more than {} times the fiber diameter, {}, the most that can be computed; check the units",
                    figure(most_side_by_side, 0), c.shown("fiber.diameter")));
  }
}

void check_fiber(Checker& c) {
  const Fiber& fiber = c.draft().fiber;
  const bool sized = c.sound({"fiber.diameter"});
  if (sized && c.sound({"fiber.diameter_tolerance"}) && fiber.diameter_tolerance_mm > 0.0 &&
      fiber.diameter_tolerance_mm >= fiber.diameter_mm / 2.0) {
    c.error("fiber.diameter_tolerance",
            fmt::format("must be less than half of the fiber diameter, {}", c.shown("fiber.diameter")));
  }
  if (sized && c.sound({"fiber.diameter_scatter"}) &&
      fiber.diameter_scatter_mm > Fiber::most_scatter * fiber.diameter_mm) {
    c.error("fiber.diameter_scatter",
            fmt::format("one sigma must be no more than {} of the fiber diameter, {}; fiber that varies more is"
                        " sorted out",
                        percent_text(Fiber::most_scatter, 0), c.shown("fiber.diameter")));
  }
  if (sized && c.sound({"fiber.core_diameter"}) && fiber.core_diameter_mm.value_or(0.0) > fiber.diameter_mm) {
    c.error("fiber.core_diameter",
            fmt::format("the core is wider than the whole fiber, {}", c.shown("fiber.diameter")));
  }
  if (!c.sound({"fiber.modulus", "fiber.core_diameter"})) return;
  if (fiber.modulus_MPa && !fiber.core_diameter_mm) {
    c.warn("fiber.modulus", "is not used; stiffness and strain need core_diameter too");
  }
}

void check_bend(Checker& c) {
  const std::optional<double> least = c.draft().fiber.min_bend_diameter_mm;
  if (!least || !c.sound({"fiber.min_bend_diameter", "spool.barrel_diameter", "spool.barrel_taper"})) return;
  const Spool& spool = c.draft().spool;
  const double barrel = spool.least_barrel_diameter_mm();
  if (*least > barrel) {
    c.error("fiber.min_bend_diameter",
            fmt::format("the barrel, {}, bends the fiber tighter than this; use a larger barrel",
                        c.in_unit_of("spool.barrel_diameter", barrel)));
  }
}

}  // namespace

void check_spool_and_fiber(Checker& checker) {
  check_flange(checker);
  check_barrel_taper(checker);
  check_room_between_flanges(checker);
  check_barrel_under_fiber(checker);
  check_fiber_in_spool(checker);
  check_fiber(checker);
  check_bend(checker);
}

}  // namespace laywright
