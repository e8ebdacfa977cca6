// The turns of one stroke in their order along x, station by station: what lies beside each of them.
//
// Neighbours are found by sorting, not by taking the turn before: a turn may jump over others and come back.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "lay/build.h"

namespace laywright {

class Neighbours {
 public:
  static constexpr std::size_t no_node = static_cast<std::size_t>(-1);

  // Takes another stroke; keeps its memory.
  void find(const Build& build, std::size_t stroke);

  // The next turn of the stroke to the right or left of a node, at its station; no_node when there is none.
  [[nodiscard]] std::size_t right_of(std::size_t node) const { return node_at(right_of_[node - first_]); }
  [[nodiscard]] std::size_t left_of(std::size_t node) const { return node_at(left_of_[node - first_]); }

  // Outermost nodes at a station; no_node when the stroke has not passed it.
  [[nodiscard]] std::size_t leftmost(std::size_t station) const { return leftmost_[station]; }
  [[nodiscard]] std::size_t rightmost(std::size_t station) const { return rightmost_[station]; }

 private:
  static constexpr std::uint32_t none = static_cast<std::uint32_t>(-1);

  struct Turn {
    double x;
    std::uint32_t offset;  // from the first node of the stroke
  };

  [[nodiscard]] std::size_t node_at(std::uint32_t offset) const {
    return offset == none ? no_node : first_ + offset;
  }
  void link(const std::vector<Turn>& column);

  std::size_t first_ = 0;
  std::vector<std::uint32_t> right_of_, left_of_;
  std::vector<std::size_t> leftmost_, rightmost_;
  std::vector<std::vector<Turn>> columns_;
};

}  // namespace laywright
