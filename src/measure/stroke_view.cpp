#include "measure/stroke_view.h"

#include <algorithm>
#include <cmath>

namespace laywright {

double StrokeView::turns() const {
  const double stations = static_cast<double>(build.stations_per_turn);
  const bool is_last = stroke + 1 == build.strokes.size();
  const double until = is_last ? build.turns : static_cast<double>(end) / stations;
  return until - static_cast<double>(first) / stations;
}

double StrokeView::pitch() const {
  const double laid = static_cast<double>(end - first - 1) / static_cast<double>(build.stations_per_turn);
  const double covered = build.nodes.x(end - 1) - build.nodes.x(first);
  return laid > 0.0 ? std::abs(covered) / laid : 0.0;
}

}  // namespace laywright
