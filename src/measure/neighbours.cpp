#include "measure/neighbours.h"

#include <algorithm>

namespace laywright {

namespace {

// Stations worked on together, so that each cache line of a turn is read once.
constexpr std::size_t nodes_together = 16;

// Turns come nearly in order: insertion costs little more than reading them.
template <class Turn>
void sort_by_x(std::vector<Turn>& column) {
  for (std::size_t i = 1; i < column.size(); ++i) {
    const Turn turn = column[i];
    std::size_t j = i;
    for (; j > 0 && column[j - 1].x > turn.x; --j) column[j] = column[j - 1];
    column[j] = turn;
  }
}

}  // namespace

void Neighbours::link(const std::vector<Turn>& column) {
  left_of_[column.front().offset] = none;
  right_of_[column.back().offset] = none;
  for (std::size_t i = 0; i + 1 < column.size(); ++i) {
    right_of_[column[i].offset] = column[i + 1].offset;
    left_of_[column[i + 1].offset] = column[i].offset;
  }
}

void Neighbours::find(const Build& build, std::size_t stroke) {
  const std::size_t stations = static_cast<std::size_t>(build.stations_per_turn);
  first_ = build.strokes[stroke].first_node;
  const std::size_t count = build.end_of(stroke) - first_;
  const bool rightward = build.strokes[stroke].direction > 0;
  right_of_.resize(count);
  left_of_.resize(count);
  leftmost_.assign(stations, no_node);
  rightmost_.assign(stations, no_node);
  columns_.resize(nodes_together);

  for (std::size_t from = 0; from < std::min(stations, count); from += nodes_together) {
    const std::size_t width = std::min({nodes_together, stations - from, count - from});
    for (auto& column : columns_) column.clear();
    for (std::size_t row = from; row < count; row += stations) {
      for (std::size_t c = 0; c < width && row + c < count; ++c) {
        columns_[c].push_back({build.nodes.x(first_ + row + c), static_cast<std::uint32_t>(row + c)});
      }
    }
    for (std::size_t c = 0; c < width; ++c) {
      std::vector<Turn>& column = columns_[c];
      if (!rightward) std::reverse(column.begin(), column.end());
      sort_by_x(column);
      link(column);
      const std::size_t station = (first_ + from + c) % stations;
      leftmost_[station] = first_ + column.front().offset;
      rightmost_[station] = first_ + column.back().offset;
    }
  }
}

}  // namespace laywright
