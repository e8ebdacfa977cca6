// A small chart of one curve: for sheets that are printed in black and white.
#pragma once

#include <string>
#include <vector>

#include "paper/drawing.h"

namespace laywright {

struct CurveChart {
  std::string title;         // what, and in which unit
  std::string x_words;       // what runs along, and in which unit
  std::vector<double> x, y;  // of one size; x rising
  std::string first, last;   // the curve's ends in words, written beside them
  std::string instead;       // what stands there when there is no curve
};

// Fills the box: title, frame with ticks of round values, curve.
void draw_curve_chart(Drawing& drawing, const Box& box, const CurveChart& chart);

}  // namespace laywright
