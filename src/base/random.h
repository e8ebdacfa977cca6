// Seeded random numbers that are the same on every machine: std::mt19937_64 is fixed by the standard, its
// distributions are not, so they stand here.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace laywright {

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}

  // Uniform in [0, 1).
  double uniform() { return static_cast<double>(engine_() >> 11) * 0x1.0p-53; }

  // Standard normal, by the Box-Muller transform. Both uniforms are drawn each time, so that the count of
  // draws does not depend on their values.
  double normal() {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace laywright
