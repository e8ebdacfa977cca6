#include "advise/lattice.h"

#include <cmath>

#include <boost/random/sobol.hpp>

#include "base/random.h"

namespace laywright {

std::vector<std::vector<double>> lattice(std::size_t count, std::size_t dimensions, std::uint64_t seed,
                                         const Progress* progress) {
  boost::random::sobol sequence(dimensions);
  Random random(seed);
  std::vector<double> shift(dimensions);
  for (double& each : shift) each = random.uniform();
  std::vector<std::vector<double>> points;
  points.reserve(count);
  while (points.size() < count) {
    if (progress != nullptr && progress->cancelled()) return {};
    std::vector<double>& point = points.emplace_back(dimensions);
    for (std::size_t i = 0; i < dimensions; ++i) {
      const double at = static_cast<double>(sequence() >> 11U) * 0x1.0p-53 + shift[i];
      point[i] = at - std::floor(at);
    }
  }
  return points;
}

}  // namespace laywright
