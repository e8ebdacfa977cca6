#include "measure/findings.h"

namespace laywright {

namespace {

double size_of(const EdgeShape& edge, FindingKind kind) {
  return kind == FindingKind::pile_up ? edge.ridge_mm : edge.valley_mm;
}

// The first stroke after which the edge is beyond the limit, but for a few layers, up to the last whole one.
std::size_t since(const Surface& surface, std::size_t side, FindingKind kind, double limit, std::size_t last_whole) {
  constexpr std::size_t few = 8;
  std::size_t first = last_whole;
  for (std::size_t s = last_whole; s-- > 0 && first - s <= few;) {
    if (size_of(surface.edges[s][side], kind) > limit) first = s;
  }
  return first;
}

}  // namespace

std::vector<Occurrence> find_edges(const Plan& plan, const Build& build, const Surface& surface,
                                   std::size_t last_whole) {
  const double limit = plan.limits().pile_up_d * build.fiber_diameter_mm;
  const auto zones = zones_of(plan);
  std::vector<Occurrence> found;
  for (const Side side : {Side::left, Side::right}) {
    for (const FindingKind kind : {FindingKind::pile_up, FindingKind::edge_valley}) {
      const auto at = static_cast<std::size_t>(side);
      const double size = size_of(surface.edges[last_whole][at], kind);
      if (size <= limit) continue;
      const Extent& zone = zones[static_cast<std::size_t>(side == Side::left ? Zone::left : Zone::right)];
      const std::size_t first = since(surface, at, kind, limit, last_whole);
      Occurrence edge;
      edge.kind = kind;
      edge.side = side;
      edge.layer = static_cast<int>(first) + 1;
      edge.layers = static_cast<int>(last_whole - first) + 1;
      edge.first_node = build.strokes[first].first_node;
      edge.end_node = build.end_of(last_whole);
      edge.x_min_mm = zone.from_mm;
      edge.x_max_mm = zone.to_mm;
      edge.arc = Arc::all_round();
      edge.size_mm = size;
      edge.worst_node = build.strokes[last_whole].first_node;
      found.push_back(edge);
    }
  }
  return found;
}

}  // namespace laywright
