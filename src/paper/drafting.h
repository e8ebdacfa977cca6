// The parts of a technical drawing: dimension lines, rulers, scale bars, hatching.
#pragma once

#include <string>
#include <vector>

#include "paper/drawing.h"

namespace laywright {

inline constexpr Color ink{0x1A / 255.0, 0x1A / 255.0, 0x1F / 255.0};
inline constexpr Color faint_ink{0.42, 0.42, 0.45};
inline constexpr Color paper{1.0, 1.0, 1.0};

void draw_line(Drawing& drawing, Point from, Point to, const Pen& pen);
void draw_box(Drawing& drawing, const Box& box, std::optional<Color> fill, std::optional<Pen> pen);

// Lines at 45 degrees across the box, `gap_mm` apart; combine with a clip.
void draw_hatch(Drawing& drawing, const Box& box, double gap_mm, const Pen& pen);

// A dimension line with arrow heads from a to b, which lie on one horizontal or one vertical; the words stand at its
// middle, on a patch of paper. Arrows stand outside where there is too little room.
void draw_dimension(Drawing& drawing, Point a, Point b, const std::string& words);

// A bar of a round length of the thing drawn, at most `most_mm` of page long; its left end is at `at`.
// `scale` is mm of page per mm of the thing.
void draw_scale_bar(Drawing& drawing, Point at, double most_mm, double scale);

// A ruler whose ticks point away from the thing drawn: along a horizontal line (values grow to the right), or a
// vertical one (values grow upward). `from` and `to` are the values at the line's ends.
struct Ruler {
  Point at;                // the left, or lower, end
  double length_mm = 0.0;  // of page
  double from = 0.0, to = 0.0;
  bool upright = false;
  std::string words;  // what it measures
};
void draw_ruler(Drawing& drawing, const Ruler& ruler);

// The values at its ticks.
[[nodiscard]] std::vector<double> ruler_ticks(const Ruler& ruler);

}  // namespace laywright
