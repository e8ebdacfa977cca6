// Where the spool ends in a flattened picture, to parts of a pixel. Inside the folder only.
#pragma once

#include <optional>
#include <vector>

#include "photo/flat_picture.h"

namespace laywright {

// Pixels; the middle of the first pixel is 0. A column without the spool has neither: not a number.
struct ColumnEdges {
  std::vector<double> top, bottom;

  [[nodiscard]] double height(std::size_t x) const { return bottom[x] - top[x]; }
  [[nodiscard]] double middle(std::size_t x) const { return 0.5 * (bottom[x] + top[x]); }
};

// How many pixels ground turns into spool in: their difference over the steepest rise, the median over all columns. For a
// Gaussian blur of sigma that is sqrt(2 pi) sigma.
[[nodiscard]] double edge_width_px(const FlatPicture& picture);

// Where the grey is half way between that of the ground and of the spool, each taken beside the edge, where it has come to
// rest: a straight edge blurred by anything that is even stays there.
[[nodiscard]] ColumnEdges column_edges(const FlatPicture& picture, double edge_width);

// From `from`, a place of the spool, along the row to the right (step 1) or left (-1), to where the spool ends first; none
// where it does not within `most` pixels.
[[nodiscard]] std::optional<double> row_edge(const FlatPicture& picture, double edge_width, int row, int from,
                                             int step, int most);

}  // namespace laywright
