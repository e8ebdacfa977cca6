// The fiber's diameter along its length, where the plan gives it a scatter: one draw from the seed, the same on any machine
// and at any number of stations.
//
// A first-order process: normal, one sigma of `fiber.diameter_scatter`, its correlation fading as exp(-s / scatter_length)
// over s of fiber (the simplest with a length of correlation; common practice, no source). Cut off at three sigma, as a
// fiber that is sorted out. Drawn at knots, eight to a scatter length and one to a turn at least, straight between them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "base/random.h"
#include "plan/lay_plan.h"

namespace laywright {

class FiberDiameter {
 public:
  FiberDiameter() = default;
  // Precondition: the plan is sound.
  FiberDiameter(const Plan& plan, int stations_per_turn, std::uint64_t seed);

  [[nodiscard]] bool even() const { return knots_.empty(); }  // no scatter
  // Half of the diameter may be so much more or less than half of the plan's, mm.
  [[nodiscard]] static double half_spread_mm(const Fiber& fiber) {
    return most_sigmas * 0.5 * fiber.diameter_scatter_mm;
  }

  // Draws as far as node k; turns there have that radius, mm.
  void extend_to(std::size_t k, double radius_mm);

  // Half of the diameter at node k, mm. Precondition: not even, and drawn so far.
  [[nodiscard]] float half_mm(std::size_t k) const {
    const double at = static_cast<double>(k) * knots_per_node_;
    const auto knot = static_cast<std::size_t>(at);
    const auto from = static_cast<double>(knots_[knot]), to = static_cast<double>(knots_[knot + 1]);
    return static_cast<float>(from + (at - static_cast<double>(knot)) * (to - from));
  }

  // How it travels to another process.
  [[nodiscard]] const std::vector<float>& knots() const { return knots_; }
  [[nodiscard]] double knots_per_node() const { return knots_per_node_; }
  FiberDiameter(std::vector<float> knots, double knots_per_node)
      : knots_per_node_(knots_per_node), knots_(std::move(knots)) {}

 private:
  static constexpr double most_sigmas = 3.0;
  void draw(double step_mm);

  double half_mean_ = 0.0, half_sigma_ = 0.0, correlation_mm_ = 0.0;
  double knots_per_turn_ = 1.0, knots_per_node_ = 1.0;
  double state_ = 0.0;  // in sigmas
  std::vector<float> knots_;
  std::optional<Random> random_;
};

}  // namespace laywright
