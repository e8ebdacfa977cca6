#include "scene/colouring.h"
#include "scene/covering.h"
#include "scene/pick.h"
#include "scene/turns_beside.h"

namespace laywright {

std::optional<std::size_t> node_below(const SceneSource& source, std::size_t node) {
  return newest_over(source, node % source.stations(), source.build().nodes.x(node), 0, node);
}

std::optional<std::size_t> node_above(const SceneSource& source, std::size_t node) {
  const NodeStore& nodes = source.build().nodes;
  return oldest_over(source, node % source.stations(), nodes.x(node), node + 1, nodes.size());
}

NodeFacts facts_of(const SceneSource& source, std::size_t node) {
  const Build& build = source.build();
  const std::size_t stations = source.stations(), stroke = source.stroke_of(node);
  NodeFacts facts;
  facts.node = node;
  facts.turn = static_cast<double>(node) / static_cast<double>(stations);
  facts.layer = static_cast<int>(stroke) + 1;
  facts.direction = build.strokes[stroke].direction;
  facts.turn_in_layer = static_cast<double>(node - build.strokes[stroke].first_node) / static_cast<double>(stations);
  facts.length_mm = source.line().at(node);
  facts.x_mm = build.nodes.x(node);
  facts.r_mm = build.nodes.r(node);
  facts.angle_deg = 360.0 * static_cast<double>(node % stations) / static_cast<double>(stations);
  facts.support = build.nodes.support(node);
  facts.rides_up = build.nodes.rides_up(node);
  facts.rise_d = rise_d(source, node);
  facts.gap_d = gap_d(source, node);
  if (node >= stations) facts.before = node - stations;
  if (node + stations < build.nodes.size()) facts.after = node + stations;
  const TurnsBeside beside = turns_beside(source, node, stroke);
  facts.left = beside.left;
  facts.right = beside.right;
  facts.below = node_below(source, node);
  facts.above = node_above(source, node);
  return facts;
}

}  // namespace laywright
