// The outline of a wound spool, as a photograph shows it, over that of the build.
#pragma once

#include <string>
#include <vector>

#include "paper/drawing.h"

namespace laywright {

struct ProfileChart {
  std::string title, line;  // the wind; and what of it was seen when
  double width_mm = 0.0;    // between the flange faces at the barrel
  // Place along the axis from the left flange, rising; diameter; one sigma of it. At least two places.
  std::vector<double> seen_x_mm, seen_mm, sigma_mm;
  // Of the build: the same, or levels over a part of the width; either may be empty.
  std::vector<double> build_x_mm, build_mm;
  struct Level {
    double from_mm = 0.0, to_mm = 0.0, diameter_mm = 0.0;
  };
  std::vector<Level> build_levels;
  std::vector<std::string> notes;  // sentences
};

// A page. What the rims hide is told, too.
[[nodiscard]] Drawing profile_chart(const ProfileChart& chart);

}  // namespace laywright
