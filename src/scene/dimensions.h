// Figures in the picture: dimension lines, the scale bar, the axis.
#pragma once

#include <string>
#include <vector>

#include "scene/scene_source.h"

namespace laywright {

// A line with arrows at both ends and a text at its middle. Helper lines run from what is measured to its ends.
// Pointed: one arrow from outside (`from`) onto a place of a surface (`measured_from`), or, seen from below, from `to` onto
// `measured_to`. A diameter within the flanges is measured so: helper lines from there would cross a flange.
struct DimensionLine {
  Vec3 from, to;
  Vec3 measured_from, measured_to;
  std::string text;  // "rim \u00D8 236 mm": what, and a quantity with its unit
  bool pointed = false;
};

// Rim diameter and inside width in the axial plane Z = 0, and the greatest wound diameter, left out while there are no
// measurements, or where the view shows less than the whole wind or has cut away that part of the width. It points at the
// highest fiber itself where that lies within 60 degrees of the side that is pointed at, upper or lower; else at that
// side of the circle about the axis that goes through it. Where these are cut away: beside the cut.
// Empty when the view does not show dimensions.
[[nodiscard]] std::vector<DimensionLine> make_dimensions(const SceneSource& source, const View& view);

// True at the camera's target.
struct ScaleBar {
  double length_mm = 0.0;  // 1, 2 or 5 times a power of ten of mm, or of inches
  double length_px = 0.0;  // at most a fifth of the picture's width
  std::string text;        // "20 mm", "0.5 in"
};
[[nodiscard]] ScaleBar make_scale_bar(const View& view);

// The spool's axis, a little longer than the spool, and the start of angles.
struct AxisMark {
  Vec3 from, to;            // axis, left to right
  Vec3 zero_from, zero_to;  // on the left flange's outer face: from the rim outward at angle 0
};
[[nodiscard]] AxisMark make_axis(const Plan& plan);

}  // namespace laywright
