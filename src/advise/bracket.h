// The moves of one setting, in one direction: growing steps to the end of its range, to see how far an amount comes
// down; then between the first that was enough and the last before it that was not, for the smallest that is. A state
// machine, so that many searches can share one batch of trials.
#pragma once

#include <optional>
#include <vector>

namespace laywright {

class Bracket {
 public:
  // Moves of 1, 2, 5, 10, 20, 50 ... steps up to `limit`, which has the sign of the direction and is tried last.
  // `aim`: the share of the amount that may be left.
  Bracket(double step, double limit, double aim) : step_(step), limit_(limit), aim_(aim) {}

  // The next move to try; none when the search is over.
  [[nodiscard]] std::optional<double> next() const;

  // What was left of the amount at that move: a share, 0 or more; none when it could not be tried: then further ones
  // are not.
  void tell(double move, std::optional<double> share);

  struct Tried {
    double move, share;
  };
  [[nodiscard]] const std::vector<Tried>& tried() const { return tried_; }
  // The smallest move that leaves at most `share`.
  [[nodiscard]] std::optional<Tried> smallest(double share) const;
  // The one that leaves least; the smaller move of two.
  [[nodiscard]] std::optional<Tried> best() const;

 private:
  double step_, limit_, aim_;
  int grown_ = 0;            // growing steps that were tried
  bool at_end_ = false;      // of the range, or of what is sound
  double too_little_ = 0.0;  // the greatest move below enough_ that was not enough
  std::optional<double> enough_;
  std::vector<Tried> tried_;
};

}  // namespace laywright
