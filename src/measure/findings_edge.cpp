#include <cmath>

#include "measure/findings.h"

namespace laywright {

namespace {

// True when the fiber of the stroke went on to the other flange: another stroke follows, or its end lies as near
// to the far side as the stroke before began there.
bool is_whole(const Plan& plan, const Build& build, std::size_t stroke) {
  if (stroke + 1 < build.strokes.size()) return true;
  const NodeStore& nodes = build.nodes;
  const std::size_t first = build.strokes[stroke].first_node;
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

// Crest of an edge over the middle, the barrel's own taper taken off.
double edge_height(const Plan& plan, const ZoneRadii& radii, Zone edge) {
  const auto zones = zones_of(plan);
  const auto barrel = [&](Zone zone) {
    const Extent& extent = zones[static_cast<std::size_t>(zone)];
    const double share = 0.5 * (extent.from_mm + extent.to_mm) / plan.spool().inside_width_mm;
    return 0.5 * plan.spool().barrel_taper_mm * share;
  };
  return radii[static_cast<std::size_t>(edge)] - radii[static_cast<std::size_t>(Zone::middle)] -
         (barrel(edge) - barrel(Zone::middle));
}

}  // namespace

std::vector<Occurrence> find_edges(const Plan& plan, const Build& build, const Surface& surface) {
  const double limit = plan.limits().pile_up_d * build.fiber_diameter_mm;
  const auto zones = zones_of(plan);
  std::vector<Occurrence> found;
  for (std::size_t s = 0; s < build.strokes.size(); ++s) {
    if (!is_whole(plan, build, s)) continue;
    for (const Side side : {Side::left, Side::right}) {
      const Zone zone = side == Side::left ? Zone::left : Zone::right;
      const double height = edge_height(plan, surface.after_stroke[s], zone);
      if (std::abs(height) <= limit) continue;
      Occurrence edge;
      edge.kind = height > 0.0 ? FindingKind::pile_up : FindingKind::edge_valley;
      edge.side = side;
      edge.layer = static_cast<int>(s) + 1;
      edge.first_node = build.strokes[s].first_node;
      edge.end_node = build.end_of(s);
      edge.x_min_mm = zones[static_cast<std::size_t>(zone)].from_mm;
      edge.x_max_mm = zones[static_cast<std::size_t>(zone)].to_mm;
      edge.arc = Arc::all_round();
      edge.size_mm = std::abs(height);
      edge.worst_node = edge.first_node;
      found.push_back(edge);
    }
  }
  return found;
}

}  // namespace laywright
