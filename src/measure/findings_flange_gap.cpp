#include <algorithm>

#include "measure/findings.h"

namespace laywright {

namespace {

// The arc of the stations where the distance is over the limit: all but the longest stretch where it is not.
Arc open_arc(const std::vector<double>& distance, double limit) {
  const std::size_t stations = distance.size();
  std::size_t longest = 0, longest_end = 0, run = 0;
  for (std::size_t i = 0; i < 2 * stations; ++i) {
    run = distance[i % stations] > limit ? 0 : run + 1;
    if (run > longest && run <= stations) {
      longest = run;
      longest_end = i + 1;
    }
  }
  if (longest == 0) return Arc::all_round();
  const double per_station = 360.0 / static_cast<double>(stations);
  const double from = static_cast<double>(longest_end % stations) * per_station;
  return arc_between(from, from + static_cast<double>(stations - longest) * per_station);
}

}  // namespace

std::vector<Occurrence> find_flange_gap(const StrokeView& view, const FlangeReach& reach) {
  if (!reach.open) return {};
  const NodeStore& nodes = view.build.nodes;
  Occurrence found;
  found.kind = FindingKind::flange_gap;
  found.side = reach.side;
  found.layer = reach.layer;
  found.size_mm = reach.size_mm;
  found.worst_node = reach.outermost[reach.worst_station];
  found.first_node = found.worst_node;
  found.end_node = found.worst_node + 1;
  const bool left = reach.side == Side::left;
  const double outward = left ? -1.0 : 1.0;
  const double half = 0.5 * view.diameter();
  const double start = nodes.x(found.worst_node) + outward * half;
  found.x_min_mm = found.x_max_mm = start;
  for (std::size_t j = 0; j < reach.distance_mm.size(); ++j) {
    if (reach.distance_mm[j] <= view.gap_limit()) continue;
    const std::size_t node = reach.outermost[j];
    found.first_node = std::min(found.first_node, node);
    found.end_node = std::max(found.end_node, node + 1);
    const double inner = nodes.x(node) + outward * half;
    const double face = inner + outward * reach.distance_mm[j];
    found.x_min_mm = std::min({found.x_min_mm, inner, face});
    found.x_max_mm = std::max({found.x_max_mm, inner, face});
  }
  found.arc = open_arc(reach.distance_mm, view.gap_limit());
  return {found};
}

}  // namespace laywright
