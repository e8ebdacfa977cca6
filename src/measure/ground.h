// What fiber can lie on at one angle of the spool, in radii over x: the barrel, and the flange faces where they open
// beyond it.
#pragma once

#include "measure/height_field.h"
#include "plan/lay_plan.h"

namespace laywright {

class Ground {
 public:
  // theta: angle of the spool, rad; it matters for flanges out of square.
  Ground(const Spool& spool, double theta);

  // At x, mm; infinite where the flange leaves no room for fiber.
  [[nodiscard]] double radius_mm(double x) const;

 private:
  [[nodiscard]] double on_face(double x, double barrel_mm) const;

  double width_;
  double left_, right_;  // radius of the barrel at its ends
  double opening_;       // of a face without run-out, mm per mm of radius
  double lean_;          // inward, of either face at this angle
};

// Integral of r dr dx, times two, between ground and surface, mm^3: a turn of the spool has pi times as much volume.
// The field's heights count from the barrel's radius at its left end.
[[nodiscard]] double section_moment(const Ground& ground, const HeightField& field, double base_mm);

}  // namespace laywright
