#include "measure/fiber_line.h"

#include <algorithm>
#include <numbers>

namespace laywright {

FiberLine::FiberLine(const Build& build)
    : stations_(static_cast<std::size_t>(build.stations_per_turn)), turns_(build.turns) {
  const NodeStore& nodes = build.nodes;
  const double angle = 2.0 * std::numbers::pi / build.stations_per_turn;
  const double end = build.turns * build.stations_per_turn;
  at_turn_.push_back(0.0);
  double sum = 0.0;
  double x0 = nodes.size() > 0 ? nodes.x(0) : 0.0;
  double r0 = nodes.size() > 0 ? nodes.r(0) : 0.0;
  for (std::size_t k = 0; k + 1 < nodes.size() && static_cast<double>(k) < end; ++k) {
    const double x1 = nodes.x(k + 1), r1 = nodes.r(k + 1);
    const double share = std::min(1.0, end - static_cast<double>(k));
    sum += share * piece_length(x0, r0, x1, r1, angle);
    if ((k + 1) % stations_ == 0 && static_cast<double>(k + 1) < end) at_turn_.push_back(sum);
    x0 = x1;
    r0 = r1;
  }
  at_turn_.push_back(sum);
}

double FiberLine::at(std::size_t node) const {
  const double turn = std::min(static_cast<double>(node) / static_cast<double>(stations_), turns_);
  const std::size_t whole = std::min(static_cast<std::size_t>(turn), at_turn_.size() - 2);
  const double last = std::min(turns_, static_cast<double>(whole) + 1.0);
  const double span = last - static_cast<double>(whole);
  if (span <= 0.0) return at_turn_[whole + 1];
  const double share = (turn - static_cast<double>(whole)) / span;
  return at_turn_[whole] + share * (at_turn_[whole + 1] - at_turn_[whole]);
}

}  // namespace laywright
