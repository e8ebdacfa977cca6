#include "measure/neighbours.h"

#include <algorithm>

namespace laywright {

namespace {

// Stations worked on together, so that each cache line of a turn is read once.
constexpr std::size_t block = 16;

}  // namespace

// Turns come nearly in order: insertion costs little more than reading them.
void Neighbours::sort_column(std::vector<Turn>& column) const {
  for (std::size_t i = 1; i < column.size(); ++i) {
    const Turn turn = column[i];
    std::size_t j = i;
    for (; j > 0 && column[j - 1].x > turn.x; --j) column[j] = column[j - 1];
    column[j] = turn;
  }
}

void Neighbours::find(const Build& build, std::size_t stroke) {
  const std::size_t stations = static_cast<std::size_t>(build.stations_per_turn);
  const std::size_t first = build.strokes[stroke].first_node;
  const std::size_t count = build.end_of(stroke) - first;
  const bool rightward = build.strokes[stroke].direction > 0;
  to_the_right_.assign(count, no_turn);
  leftmost_.assign(stations, no_node);
  rightmost_.assign(stations, no_node);
  columns_.resize(block);

  for (std::size_t from = 0; from < std::min(stations, count); from += block) {
    const std::size_t width = std::min({block, stations - from, count - from});
    for (auto& column : columns_) column.clear();
    for (std::size_t row = from; row < count; row += stations) {
      for (std::size_t c = 0; c < width && row + c < count; ++c) {
        columns_[c].push_back({build.nodes.x(first + row + c), row + c});
      }
    }
    for (std::size_t c = 0; c < width; ++c) {
      std::vector<Turn>& column = columns_[c];
      if (!rightward) std::reverse(column.begin(), column.end());
      sort_column(column);
      for (std::size_t i = 0; i + 1 < column.size(); ++i) {
        to_the_right_[column[i].offset] = static_cast<float>(column[i + 1].x - column[i].x);
      }
      const std::size_t station = (first + from + c) % stations;
      leftmost_[station] = first + column.front().offset;
      rightmost_[station] = first + column.back().offset;
    }
  }
}

}  // namespace laywright
