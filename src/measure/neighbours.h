// The turns of one stroke in their order along x, station by station: what lies beside each of them.
//
// Neighbours are found by sorting, not by taking the turn before: a turn may jump over others and come back.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "lay/build.h"

namespace laywright {

class Neighbours {
 public:
  static constexpr float no_turn = -1.0F;
  static constexpr std::size_t no_node = static_cast<std::size_t>(-1);

  // Takes another stroke; keeps its memory.
  void find(const Build& build, std::size_t stroke);

  // Distance in x from a node of the stroke to the next turn to the right, centre to centre, mm; no_turn when
  // there is none. `offset` counts from the first node of the stroke.
  [[nodiscard]] float to_the_right(std::size_t offset) const { return to_the_right_[offset]; }

  // Outermost nodes at a station; no_node when the stroke has not passed it.
  [[nodiscard]] std::size_t leftmost(std::size_t station) const { return leftmost_[station]; }
  [[nodiscard]] std::size_t rightmost(std::size_t station) const { return rightmost_[station]; }

 private:
  struct Turn {
    double x;
    std::size_t offset;
  };
  void sort_column(std::vector<Turn>& column) const;

  std::vector<float> to_the_right_;
  std::vector<std::size_t> leftmost_, rightmost_;
  std::vector<std::vector<Turn>> columns_;
};

}  // namespace laywright
