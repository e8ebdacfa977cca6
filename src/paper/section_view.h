// A window onto an axial section, placed on a page: flanges, barrel, and each turn as a circle.
#pragma once

#include "paper/drawing.h"
#include "paper/section_cut.h"

namespace laywright {

// A part of the section, x to the right and r upward, and where its lower left corner stands on the page.
struct SectionView {
  double from_x_mm = 0.0, to_x_mm = 0.0;
  double from_r_mm = 0.0, to_r_mm = 0.0;
  Point corner;
  double scale = 1.0;  // mm of page per mm of spool

  [[nodiscard]] Point at(double x_mm, double r_mm) const {
    return {corner.x + (x_mm - from_x_mm) * scale, corner.y - (r_mm - from_r_mm) * scale};
  }
  [[nodiscard]] Box box() const {
    const Point top = at(from_x_mm, to_r_mm);
    return {top.x, top.y, (to_x_mm - from_x_mm) * scale, (to_r_mm - from_r_mm) * scale};
  }
};

// Draws what the view shows. Turns are coloured by layer (colors.h), each with a dark rim.
void draw_section(Drawing& drawing, const SectionCut& cut, const SectionView& view);

// Writes on it the numbers of layers, as many as there is room for: each, or every second, fifth, tenth and so on, at the turns
// nearest to the view's middle.
void draw_layer_numbers(Drawing& drawing, const SectionCut& cut, const SectionView& view);

}  // namespace laywright
