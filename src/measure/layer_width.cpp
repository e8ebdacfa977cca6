#include "measure/layer_width.h"

#include <algorithm>
#include <cmath>

namespace laywright {

double layer_width_mm(const Build& build, std::size_t stroke) {
  double least = HUGE_VAL, most = -HUGE_VAL;
  for (std::size_t k = build.strokes[stroke].first_node; k < build.end_of(stroke); ++k) {
    least = std::min(least, build.nodes.x(k) - build.half_mm(k));
    most = std::max(most, build.nodes.x(k) + build.half_mm(k));
  }
  return std::max(0.0, most - least);
}

}  // namespace laywright
