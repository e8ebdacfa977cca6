#include "lay/fiber_diameter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace laywright {
namespace {

constexpr double knots_per_scatter_length = 8.0;

}  // namespace

FiberDiameter::FiberDiameter(const Plan& plan, int stations_per_turn, std::uint64_t seed) {
  const Fiber& fiber = plan.fiber();
  if (fiber.diameter_scatter_mm <= 0.0) return;
  half_mean_ = 0.5 * fiber.diameter_mm;
  half_sigma_ = 0.5 * fiber.diameter_scatter_mm;
  correlation_mm_ = fiber.scatter_length_mm;
  const double turn = std::numbers::pi * plan.spool().barrel_diameter_mm;
  knots_per_turn_ = std::clamp(std::ceil(knots_per_scatter_length * turn / correlation_mm_), 1.0,
                               static_cast<double>(stations_per_turn));
  knots_per_node_ = knots_per_turn_ / stations_per_turn;
  random_.emplace(seed ^ 0xD1B54A32D192ED03ULL);
  state_ = random_->normal();
  draw(0.0);
}

void FiberDiameter::draw(double step_mm) {
  const double keeps = std::exp(-step_mm / correlation_mm_);
  if (step_mm > 0.0) state_ = keeps * state_ + std::sqrt(1.0 - keeps * keeps) * random_->normal();
  knots_.push_back(static_cast<float>(half_mean_ + half_sigma_ * std::clamp(state_, -most_sigmas, most_sigmas)));
}

void FiberDiameter::extend_to(std::size_t k, double radius_mm) {
  const auto last = static_cast<std::size_t>(static_cast<double>(k) * knots_per_node_) + 1;
  const double step = 2.0 * std::numbers::pi * radius_mm / knots_per_turn_;
  while (knots_.size() <= last) draw(step);
}

}  // namespace laywright
