// Follows a fiber along the turns of another stroke: between which two of them does it lie?
//
// At a station the other stroke has left one circle per turn. Going along the fiber, each of those turns is a
// strand that runs beside it, so the pair of strands on its two sides changes only where the fiber crosses one.
// That makes the search a short walk from the last place, whatever the number of turns.
#pragma once

#include <algorithm>
#include <cstddef>

#include "lay/build.h"

namespace laywright {

class StrandCursor {
 public:
  // Where in the other stroke the search begins.
  enum class From { first_turn, last_turn };

  StrandCursor(const Build& build, std::size_t other_stroke, From from);

  // Goes to a node of the fiber. Precondition: nodes are visited in rising order, without a leap.
  void visit(std::size_t node);

  // The strands that the fiber lies between, named in the direction in which the other stroke was laid.
  [[nodiscard]] bool has_behind() const { return at_ >= first_; }
  [[nodiscard]] bool has_ahead() const { return at_ + stations_ < end_; }
  [[nodiscard]] std::size_t behind() const { return static_cast<std::size_t>(at_); }
  [[nodiscard]] std::size_t ahead() const { return static_cast<std::size_t>(at_ + stations_); }

  // How far the fiber lies from the strand behind to the one ahead, 0 to 1. Precondition: at least one is there;
  // outside the outermost strand the scale is a diameter, and only the side matters.
  [[nodiscard]] double share() const;

  // Position of the fiber in the other stroke, in turns: rises by one when the fiber crosses a strand in that
  // stroke's direction, and stays within one turn while it crosses none. Precondition: as for share.
  [[nodiscard]] double position() const { return turn_ + share(); }

 private:
  using Index = std::ptrdiff_t;

  void step(int turns) {
    at_ += turns * stations_;
    turn_ += turns;
  }

  const Build& build_;
  Index stations_, first_, end_, direction_;
  Index at_ = 0;  // the strand behind; below first_ when the fiber lies before all strands
  Index node_ = -1;
  From from_;
  double x_ = 0.0;
  double turn_ = 0.0;  // of the strand behind, counted from where the search began
};

// Counts the strands that a fiber crosses from its positions, one per node. A crossing counts once the fiber has
// passed the strand by a tenth of the way to the next one, so that lying on top of a strand is not crossing it.
class CrossingCounter {
 public:
  void add(double position);
  [[nodiscard]] int count() const { return count_; }

 private:
  bool begun_ = false;
  double cell_ = 0.0;
  int count_ = 0;
};

// In the header since they are called for every node.
inline void StrandCursor::visit(std::size_t node) {
  const Index k = static_cast<Index>(node);
  if (node_ < 0) {
    // The first or the last strand at the station of the node.
    const Index after_first = ((k - first_) % stations_ + stations_) % stations_;
    at_ = first_ + after_first;
    if (from_ == From::last_turn && at_ < end_) at_ += (end_ - 1 - at_) / stations_ * stations_;
  } else {
    at_ += k - node_;
  }
  if (at_ >= end_) step(-1);
  node_ = k;
  x_ = build_.nodes.x(node);

  const double sign = static_cast<double>(direction_);
  const auto passed = [&](Index strand) {
    return sign * (x_ - build_.nodes.x(static_cast<std::size_t>(strand))) >= 0.0;
  };
  while (at_ + stations_ < end_ && passed(at_ + stations_)) step(1);
  while (at_ >= first_ && !passed(at_)) step(-1);
}

inline double StrandCursor::share() const {
  constexpr double almost_one = 0.999;
  if (has_behind() && has_ahead()) {
    const double x0 = build_.nodes.x(behind());
    const double x1 = build_.nodes.x(ahead());
    return x1 == x0 ? 0.5 : (x_ - x0) / (x1 - x0);
  }
  const double d = build_.fiber_diameter_mm;
  const double sign = static_cast<double>(direction_);
  if (has_behind()) return std::min(sign * (x_ - build_.nodes.x(behind())) / d, almost_one);
  return 1.0 - std::min(sign * (build_.nodes.x(ahead()) - x_) / d, almost_one);
}

}  // namespace laywright
