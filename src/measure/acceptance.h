// What is accepted of a wind: the plan's own limits, and where it gives none, the usual ones for its kind of product.
//
// The usual ones are common practice and have no source, but for those of which another is told here:
//   valley        1 d: as the limit of ridges, limits.pile_up
//   unevenness    1 d: as that; a surface that differs by less than one layer counts as level
//   open gaps     2 % of the fiber: an edge or a knot of gaps, not a whole layer; wire and yarn 20 %, above what a wild but
//                 even spool has (11 to 14 % in the model's copper of .5 mm, 1 to 3.2 km), below a layer in four
//   flange gap    2 d: room for two turns, into which one falls to the bottom
//   dropped turns 200 places per km: about one turn in ten on a spool of 150 mm; wire one place in each turn of the barrel
//   drop depth    4 d: through four layers, where walls on both sides hold it
//   ride-ups      300 places per km: half as many again as dropped turns, since they come off first; wire as dropped turns
//   ribbon        1 d: a step of one fiber
//   payoff force  1.5: half as much again as the pull of winding; a spool that is braked for less runs on when such a place
//                 lets go
// Turns out of order press glass at a point, and light is lost there; wire and yarn bear it, and a delivery spool of them is
// held to be even and to come off freely. So with wire, dropped turns and ride-ups by number make a wind marginal at most (its layers are lost, and its windings no longer
// count by layers), unless the plan gives their limit; with yarn they are not weighed. In a crossed wind, turns stand apart, cross and
// stay away from flanges because the plan says so: gaps, flange gaps, dropped turns and ride-ups are not weighed unless the
// plan gives their limit; valley 6 d and unevenness 3 d, since crossed layers end where their guide turns back. (The model's
// crossed winds without a ribbon have 1 to 3.5 d and .4 to 1.8 d.)
#pragma once

#include <cstdint>
#include <optional>

#include "measure/grade.h"
#include "plan/lay_plan.h"

namespace laywright {

// Fiber: whatever is not one of the others, so that the strictest limits hold where the plan tells little.
enum class Product : std::uint8_t { fiber, wire, yarn, crossed };

// Crossed: a pitch of 4 d or more. Yarn: else, with a modulus below 20 GPa (from memory: yarns and monofilaments of nylon,
// polyester and polypropylene have 2 to 15, aluminium 70, glass 72, copper 117). Wire: else, with a core of two thirds of its diameter or more (enamel is thin: at most .2 of
// the diameter down to wires of .05 mm; the coating of optical fibers takes half of theirs and more).
[[nodiscard]] Product product_of(const Plan& plan);

// "a fiber", "a wire", "a yarn", "a crossed wind".
[[nodiscard]] const char* words_for(Product product);

// In fiber diameters but where the name has a unit; absent: not weighed.
struct Acceptance {
  double ridge_d = 0.0;
  double valley_d = 0.0;
  double unevenness_d = 0.0;
  std::optional<double> open_gaps;  // share of the fiber
  std::optional<double> flange_gap_d;
  std::optional<double> dropped_turns_per_km, drop_depth_d, ride_ups_per_km;
  Grade disorder = Grade::do_not_wind;  // the worst that dropped turns and ride-ups make of a wind by their number
  double ribbon_d = 0.0;
  double rim_clearance_mm = 0.0;
  double pull = 1.0;          // share of the fiber's greatest tension
  double payoff_force = 0.0;  // to draw the fiber off, as a multiple of the tension with which it was wound
};

[[nodiscard]] Acceptance acceptance_of(const Plan& plan);

}  // namespace laywright
