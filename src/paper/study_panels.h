// The panels of a study's picture.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "advise/study.h"
#include "paper/drawing.h"

namespace laywright {

// Cells of one figure over two keys, coloured, with a colour bar; good ones have a dot, marginal ones a ring.
void draw_map(Drawing& drawing, const Box& box, const Study& study, std::size_t figure);

// One figure over one key; a good one has a dot, a marginal one a ring, any other a point.
void draw_curve(Drawing& drawing, const Box& box, const Study& study, std::size_t figure);

// How often each value comes, with lines at 5, 50 and 95 %.
void draw_histogram(Drawing& drawing, const Box& box, const std::vector<double>& values, const std::string& words);

// Variance shares, alone and with all others.
struct ShareBar {
  std::string words;
  double first = 0.0, total = 0.0;
};
void draw_shares(Drawing& drawing, const Box& box, const std::vector<ShareBar>& bars);

}  // namespace laywright
