#include "scene/turn_index.h"

namespace laywright {

namespace {

TurnExtent extent_of(const NodeStore& nodes, std::size_t begin, std::size_t end) {
  TurnExtent extent{nodes.x(begin), nodes.x(begin), nodes.r(begin), nodes.r(begin)};
  for (std::size_t k = begin + 1; k < end; ++k) {
    const double x = nodes.x(k), r = nodes.r(k);
    extent.x_min = std::min(extent.x_min, x);
    extent.x_max = std::max(extent.x_max, x);
    extent.r_min = std::min(extent.r_min, r);
    extent.r_max = std::max(extent.r_max, r);
  }
  return extent;
}

std::vector<TurnExtent> grouped(const std::vector<TurnExtent>& level) {
  std::vector<TurnExtent> groups;
  groups.reserve(level.size() / TurnIndex::group + 1);
  for (std::size_t i = 0; i < level.size(); ++i) {
    if (i % TurnIndex::group == 0)
      groups.push_back(level[i]);
    else
      groups.back().add(level[i]);
  }
  return groups;
}

}  // namespace

TurnIndex::TurnIndex(const Build& build) {
  const std::size_t nodes = build.nodes.size();
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  if (nodes == 0) return;
  std::vector<TurnExtent> turns;
  turns.reserve(nodes / stations + 1);
  for (std::size_t begin = 0; begin < nodes; begin += stations) {
    turns.push_back(extent_of(build.nodes, begin, std::min(begin + stations + 1, nodes)));
  }
  levels_.push_back(std::move(turns));
  while (levels_.back().size() > 1) levels_.push_back(grouped(levels_.back()));
}

}  // namespace laywright
