#include "measure/whole_stroke.h"

#include <cmath>

namespace laywright {

bool is_whole(const Plan& plan, const Build& build, std::size_t stroke) {
  if (stroke + 1 < build.strokes.size()) return true;
  const NodeStore& nodes = build.nodes;
  const std::size_t first = build.strokes[stroke].first_node;
  if (first >= nodes.size()) return false;
  const double direction = build.strokes[stroke].direction;
  const double end = nodes.x(nodes.size() - 1);
  const double laid = static_cast<double>(nodes.size() - 1 - first) / build.stations_per_turn;
  const double pitch = laid > 0.0 ? std::abs(end - nodes.x(first)) / laid : 0.0;
  const double width = plan.spool().inside_width_mm;
  const double half = 0.5 * build.fiber_diameter_mm;
  const double far_side =
      stroke > 0 ? nodes.x(build.strokes[stroke - 1].first_node) : (direction > 0 ? width - half : half);
  return direction * (far_side - end) <= 1.5 * pitch;
}

std::optional<std::size_t> last_whole_stroke(const Plan& plan, const Build& build) {
  const std::size_t strokes = build.strokes.size();
  if (strokes == 0) return std::nullopt;
  if (is_whole(plan, build, strokes - 1)) return strokes - 1;
  if (strokes == 1) return std::nullopt;
  return strokes - 2;
}

}  // namespace laywright
