// Where each turn of a build runs, so that a window onto it is found without a look at all turns.
//
// Turn t is the fiber from node t * stations to the node one turn later, that node included. Its extent is the range
// of x and r of its nodes. Turns are grouped by sixteen, and the groups again, in the order in which they were laid.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "lay/build.h"

namespace laywright {

struct TurnExtent {
  double x_min = 0.0, x_max = 0.0, r_min = 0.0, r_max = 0.0;

  void add(const TurnExtent& other) {
    x_min = std::min(x_min, other.x_min);
    x_max = std::max(x_max, other.x_max);
    r_min = std::min(r_min, other.r_min);
    r_max = std::max(r_max, other.r_max);
  }
  [[nodiscard]] bool meets(const TurnExtent& other) const {
    return x_min <= other.x_max && other.x_min <= x_max && r_min <= other.r_max && other.r_min <= r_max;
  }
};

class TurnIndex {
 public:
  static constexpr std::size_t group = 16;

  explicit TurnIndex(const Build& build);

  [[nodiscard]] std::size_t turns() const { return levels_.empty() ? 0 : levels_.front().size(); }
  // levels()[0]: one per turn; levels()[n]: one per 16^n turns, up to a level of one. Empty for an empty build.
  [[nodiscard]] const std::vector<std::vector<TurnExtent>>& levels() const { return levels_; }

  // Calls visit(turn) for each turn of [begin, end) whose extent meets the window, in rising order (`forward`) or
  // falling, until it returns false.
  template <class Visit>
  void for_each(const TurnExtent& window, std::size_t begin, std::size_t end, bool forward,
                const Visit& visit) const {
    if (!levels_.empty()) walk(levels_.size() - 1, 0, window, begin, end, forward, visit);
  }

 private:
  template <class Visit>
  bool walk(std::size_t level, std::size_t at, const TurnExtent& window, std::size_t begin, std::size_t end,
            bool forward, const Visit& visit) const {
    std::size_t turns_each = 1;
    for (std::size_t i = 0; i < level; ++i) turns_each *= group;
    if (at * turns_each >= end || (at + 1) * turns_each <= begin) return true;
    if (!levels_[level][at].meets(window)) return true;
    if (level == 0) return visit(at);
    const std::size_t first = at * group;
    const std::size_t count = std::min(group, levels_[level - 1].size() - first);
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t child = first + (forward ? i : count - 1 - i);
      if (!walk(level - 1, child, window, begin, end, forward, visit)) return false;
    }
    return true;
  }

  std::vector<std::vector<TurnExtent>> levels_;
};

}  // namespace laywright
