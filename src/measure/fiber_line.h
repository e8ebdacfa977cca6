// Fiber length along a build.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include "lay/build.h"

namespace laywright {

class FiberLine {
 public:
  explicit FiberLine(const Build& build);

  // Length from the start of the wind to a node, or to the end of the wind where the node lies beyond it, mm.
  // Exact at the nodes where a turn begins, by angle between them.
  [[nodiscard]] double at(std::size_t node) const;

  // Length of a stretch of nodes [begin, end), each standing for the angle of one station, mm.
  [[nodiscard]] double between(std::size_t begin, std::size_t end) const { return at(end) - at(begin); }

  [[nodiscard]] double total() const { return at_turn_.back(); }

 private:
  std::size_t stations_ = 1;
  double turns_ = 0.0;
  std::vector<double> at_turn_;  // at the start of each turn, and at the end of the wind
};

// Length of fiber from one node to the next: straight in the developed cylinder of the mean radius.
[[nodiscard]] inline double piece_length(double x0, double r0, double x1, double r1, double angle) {
  const double around = 0.5 * (r0 + r1) * angle;
  const double dx = x1 - x0;
  const double dr = r1 - r0;
  return std::sqrt(around * around + dx * dx + dr * dr);
}

}  // namespace laywright
