// Does any turn of a build enter another, the barrel or a flange? Written from the rule alone: it shares no code
// with the lay model, only the build's way of storing its nodes.
//
// The rule: at a station, no two centres closer than d, none closer than d/2 to the barrel or to a flange face.
// Left flange face: x = -(r - R0) tan(taper) + (runout / 2) (r / R_rim) cos(theta), R0 the barrel's radius there; the
// right one is its mirror image at the inside width. Barrel: r = R0 + (taper / 2) (x / width).
#pragma once

#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "lay/build.h"
#include "plan/lay_plan.h"

namespace laywright::referee {

// A circle of a station's section: the centre of one passing turn.
struct Centre {
  double x = 0.0, r = 0.0;
  std::size_t node = 0;
  double half = 0.0;  // of its diameter
};

// All centres of one station, in the order in which they were laid.
[[nodiscard]] std::vector<Centre> centres_at(const Build& build, int station);

struct Clearance {
  double least = std::numeric_limits<double>::infinity();  // in d: 0 touches, below 0 penetrates
  std::string of = "nothing";                              // "two turns", "the barrel", "the left flange", ...
  std::size_t node = 0, other = 0;                         // other: of two turns

  void take(double clearance, const char* what, std::size_t a, std::size_t b);
  [[nodiscard]] std::string text() const;
};

// Least clearance between any two turns at any station; d the diameter that they must keep.
[[nodiscard]] Clearance clearance_of_turns(const Build& build, double d);

// Least clearance of any turn from what lies under an earlier one's overhang: fiber comes from above, so within d of
// a centre's x nothing is laid below it later. Time: turns^2 x stations.
[[nodiscard]] Clearance clearance_of_overhangs(const Build& build, double d);

// The same between turns, and of every turn from barrel and flange faces.
[[nodiscard]] Clearance clearance(const Plan& plan, const Build& build);

}  // namespace laywright::referee
