#include <algorithm>
#include <numbers>

#include "base/units.h"
#include "measure/findings.h"
#include "measure/runs.h"

namespace laywright {

namespace {

constexpr double hole_depth_d = 2.0;

// The unsupported nodes [first, end) as an occurrence, if the hole under them is deep enough.
std::optional<Occurrence> bridge_over(const StrokeView& view, std::size_t first, std::size_t end) {
  const NodeStore& nodes = view.build.nodes;
  const double per_node = 2.0 * std::numbers::pi / static_cast<double>(view.stations());
  const double angle = static_cast<double>(end - first) * per_node;
  const std::size_t middle = first + (end - first) / 2;
  const double depth = nodes.r(middle) * angle * angle / 8.0;
  if (depth <= hole_depth_d * view.diameter()) return std::nullopt;
  Occurrence found;
  found.kind = FindingKind::bridge;
  found.layer = view.layer();
  found.first_node = first;
  found.end_node = end;
  found.x_min_mm = found.x_max_mm = nodes.x(first);
  for (std::size_t k = first; k < end; ++k) {
    found.x_min_mm = std::min(found.x_min_mm, nodes.x(k));
    found.x_max_mm = std::max(found.x_max_mm, nodes.x(k));
  }
  found.arc = arc_of_nodes(first, end, view.stations());
  found.size_mm = depth;
  found.worst_node = middle;
  found.detail = angle * deg_per_rad;
  return found;
}

}  // namespace

std::vector<Occurrence> find_bridges(const StrokeView& view) {
  const NodeStore& nodes = view.build.nodes;
  std::vector<Occurrence> found;
  std::size_t k = view.first;
  // What began in the stroke before belongs to it, and what begins here is followed beyond the end.
  if (k > 0 && nodes.support(k - 1) == Support::none) {
    while (k < view.end && nodes.support(k) == Support::none) ++k;
  }
  while (k < view.end) {
    if (nodes.support(k) != Support::none) {
      ++k;
      continue;
    }
    const std::size_t first = k;
    while (k < nodes.size() && nodes.support(k) == Support::none) ++k;
    if (const auto bridge = bridge_over(view, first, k)) found.push_back(*bridge);
  }
  return found;
}

}  // namespace laywright
