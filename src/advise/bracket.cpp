#include "advise/bracket.h"

#include <algorithm>
#include <cmath>

namespace laywright {

namespace {

// An answer within this share of itself is exact enough for a setting.
constexpr double resolution = 0.1;

// 1, 2, 5, 10, 20, 50 ...
double round_number(int index) {
  constexpr double lead[] = {1.0, 2.0, 5.0};
  return lead[index % 3] * std::pow(10.0, index / 3);
}

}  // namespace

std::optional<double> Bracket::next() const {
  if (limit_ == 0.0) return std::nullopt;
  if (!at_end_) {
    const double grown = std::copysign(step_ * round_number(grown_), limit_);
    // Short of the limit by a little is the limit.
    return std::abs(grown) > 0.75 * std::abs(limit_) ? limit_ : grown;
  }
  if (!enough_) return std::nullopt;
  const double width = std::abs(*enough_ - too_little_);
  if (width <= std::max(0.5 * step_, resolution * std::abs(*enough_))) return std::nullopt;
  return 0.5 * (too_little_ + *enough_);
}

void Bracket::tell(double move, std::optional<double> share) {
  if (!at_end_) {
    ++grown_;
    at_end_ = !share || move == limit_;
  }
  if (!share) return;
  tried_.push_back({move, *share});
  const bool below = !enough_ || std::abs(move) < std::abs(*enough_);
  if (*share <= aim_ && below) enough_ = move;
  if (*share > aim_ && below) too_little_ = move;
}

std::optional<Bracket::Tried> Bracket::smallest(double share) const {
  std::optional<Tried> found;
  for (const Tried& each : tried_) {
    if (each.share <= share && (!found || std::abs(each.move) < std::abs(found->move))) found = each;
  }
  return found;
}

std::optional<Bracket::Tried> Bracket::best() const {
  std::optional<Tried> found;
  for (const Tried& each : tried_) {
    const bool same = found && each.share == found->share;
    if (!found || each.share < found->share || (same && std::abs(each.move) < std::abs(found->move))) found = each;
  }
  return found;
}

}  // namespace laywright
