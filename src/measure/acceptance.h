// What is accepted of a wind: the plan's own limits, and where it gives none, the usual ones for its kind of product.
//
// The usual ones are common practice and have no source, but for those of which another is told here:
//   valley        1 d: as the limit of ridges, limits.pile_up
//   unevenness    1 d: as that; a surface that differs by less than one layer counts as level
//   open gaps     2 % of the fiber; wire 3 %: an edge or a knot of gaps, not a whole layer
//   flange gap    2 d: room for two turns, into which one falls to the bottom
//   dropped turns 200 places per km, wire 300: about one turn in ten on a spool of 150 mm
//   drop depth    4 d: through four layers, where walls on both sides hold it
//   ride-ups      300 places per km, wire 450: half as many again as dropped turns, since they come off first
//   ribbon        1 d: a step of one fiber
//   payoff force  1.5: half as much again as the pull of winding; a spool that is braked for less runs on when such a place
//                 lets go
// Wire is given half as much again: enamelled copper bends where glass breaks. In a crossed wind, turns stand apart, cross and
// stay away from flanges because the plan says so: gaps, flange gaps, dropped turns and ride-ups are not weighed unless the
// plan gives their limit; valley 6 d and unevenness 3 d, since crossed layers end where their guide turns back. (The model's
// crossed winds without a ribbon have 1 to 3.5 d and .4 to 1.8 d.)
#pragma once

#include <cstdint>
#include <optional>

#include "plan/lay_plan.h"

namespace laywright {

// Fiber: whatever is not one of the others, so that the strictest limits hold where the plan tells little.
enum class Product : std::uint8_t { fiber, wire, crossed };

// Crossed: a pitch of 4 d or more. Wire: else, with a core of two thirds of its diameter or more (enamel is thin: at most .2 of
// the diameter down to wires of .05 mm; the coating of optical fibers takes half of theirs and more).
[[nodiscard]] Product product_of(const Plan& plan);

// "a fiber", "a wire", "a crossed wind".
[[nodiscard]] const char* words_for(Product product);

// In fiber diameters but where the name has a unit; absent: not weighed.
struct Acceptance {
  double ridge_d = 0.0;
  double valley_d = 0.0;
  double unevenness_d = 0.0;
  std::optional<double> open_gaps;  // share of the fiber
  std::optional<double> flange_gap_d;
  std::optional<double> dropped_turns_per_km, drop_depth_d, ride_ups_per_km;
  double ribbon_d = 0.0;
  double rim_clearance_mm = 0.0;
  double pull = 1.0;          // share of the fiber's greatest tension
  double payoff_force = 0.0;  // to draw the fiber off, as a multiple of the tension with which it was wound
};

[[nodiscard]] Acceptance acceptance_of(const Plan& plan);

}  // namespace laywright
