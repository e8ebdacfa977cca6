#include "measure/findings.h"

#include <algorithm>

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

double from_flange(const Plan& plan, Side side, double x_mm) {
  return side == Side::left ? x_mm : plan.spool().inside_width_mm - x_mm;
}

// Of a stroke's fiber in the edge zone, the highest of a ridge or the lowest of a valley; where it laid none there, the nearest.
std::size_t worst_of(const Plan& plan, const Build& build, std::size_t stroke, Side side, FindingKind kind,
                     double zone_mm) {
  const NodeStore& nodes = build.nodes;
  std::size_t worst = build.strokes[stroke].first_node;
  for (std::size_t k = worst; k < build.end_of(stroke); ++k) {
    const double there = std::max(from_flange(plan, side, nodes.x(k)), zone_mm);
    const double before = std::max(from_flange(plan, side, nodes.x(worst)), zone_mm);
    const double higher = nodes.r(k) - nodes.r(worst);
    if (there < before || (there == before && (kind == FindingKind::pile_up ? higher : -higher) > 0.0)) worst = k;
  }
  return worst;
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
      edge.worst_node = worst_of(plan, build, last_whole, side, kind, zone.to_mm - zone.from_mm);
      found.push_back(edge);
    }
  }
  return found;
}

}  // namespace laywright
