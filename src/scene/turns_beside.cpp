#include "scene/turns_beside.h"

#include <algorithm>
#include <cmath>

namespace laywright {

namespace {

// Turns of a stroke at one station, in their order.
struct Column {
  const NodeStore& nodes;
  std::size_t first, stations, count;

  [[nodiscard]] std::size_t node(std::size_t turn) const { return first + turn * stations; }
  [[nodiscard]] double x(std::size_t turn) const { return nodes.x(node(turn)); }
};

Column column_of(const SceneSource& source, std::size_t node, std::size_t stroke) {
  const Build& build = source.build();
  const std::size_t stations = source.stations(), begin = build.strokes[stroke].first_node;
  const std::size_t first = begin + (node % stations + stations - begin % stations) % stations;
  const std::size_t end = build.end_of(stroke);
  return {build.nodes, first, stations, first < end ? (end - 1 - first) / stations + 1 : 0};
}

// By the share of the way, then step by step while that comes nearer.
std::size_t nearest_turn(const Column& column, double x) {
  const std::size_t last = column.count - 1;
  const double from = column.x(0), to = column.x(last);
  const double share = to == from ? 0.0 : std::clamp((x - from) / (to - from), 0.0, 1.0);
  auto at = static_cast<std::size_t>(std::lround(share * static_cast<double>(last)));
  double off = std::abs(column.x(at) - x);
  const auto walk = [&](bool onward) {
    while (onward ? at < last : at > 0) {
      const std::size_t next = onward ? at + 1 : at - 1;
      const double next_off = std::abs(column.x(next) - x);
      if (next_off > off) return;
      at = next;
      off = next_off;
    }
  };
  walk(true);
  walk(false);
  return at;
}

}  // namespace

TurnsBeside turns_beside(const SceneSource& source, std::size_t node, std::size_t stroke) {
  constexpr std::size_t reach = 4;
  TurnsBeside beside;
  const Column column = column_of(source, node, stroke);
  if (column.count == 0) return beside;
  const double x = source.build().nodes.x(node);
  const bool own = node >= column.first && node < source.build().end_of(stroke);
  const std::size_t at = own ? (node - column.first) / column.stations : nearest_turn(column, x);
  double left_x = 0.0, right_x = 0.0;
  for (std::size_t turn = at - std::min(at, reach); turn <= std::min(at + reach, column.count - 1); ++turn) {
    const std::size_t other = column.node(turn);
    if (other == node) continue;
    const double other_x = column.x(turn);
    if (other_x <= x && (!beside.left || other_x > left_x)) {
      beside.left = other;
      left_x = other_x;
    } else if (other_x > x && (!beside.right || other_x < right_x)) {
      beside.right = other;
      right_x = other_x;
    }
  }
  return beside;
}

}  // namespace laywright
