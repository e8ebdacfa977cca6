// The wound spool cut by a half plane through its axis: what an axial section shows, in mm of the spool.
#pragma once

#include <cstddef>
#include <vector>

#include "lay/build.h"
#include "lay/section.h"
#include "plan/lay_plan.h"

namespace laywright {

struct SectionCut {
  // One passing turn. A true circle: at winding pitches the section of a tilted turn differs by far less than a
  // pixel.
  struct Turn {
    double x_mm = 0.0, r_mm = 0.0;
    std::size_t layer = 1;
    double half_mm = 0.0;  // of its diameter
  };

  double angle_deg = 0.0;          // of the station that was cut
  double fiber_diameter_mm = 0.0;  // without its scatter
  double inside_width_mm = 0.0;
  double rim_radius_mm = 0.0;
  double barrel_left_mm = 0.0, barrel_right_mm = 0.0;  // radius at either end
  FaceLine left, right;                                // the flange faces
  std::vector<Turn> turns;                             // in the order in which they were laid
  std::size_t layers = 0;                              // of the whole wind

  // Where the flange faces are at a radius.
  [[nodiscard]] double left_face(double r_mm) const { return left.at(r_mm); }
  [[nodiscard]] double right_face(double r_mm) const { return right.at(r_mm); }
  [[nodiscard]] double barrel(double x_mm) const {
    return barrel_left_mm + (barrel_right_mm - barrel_left_mm) * x_mm / inside_width_mm;
  }

  // Outer radius of the surface between two places; the barrel's where nothing is wound.
  [[nodiscard]] double surface_radius(double from_x_mm, double to_x_mm) const;
};

// Cuts at the station nearest to the angle (any value; taken round the circle). Precondition: the build was laid
// from the plan.
[[nodiscard]] SectionCut cut_section(const Plan& plan, const Build& build, double angle_deg);

}  // namespace laywright
