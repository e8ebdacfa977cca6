#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "lay/plans.h"
#include "wound.h"

using namespace laywright;
using testing::wound;

namespace {

// Mean height of the top layer's centre lines over the barrel, station by station, mm.
std::vector<double> height_of_last_layer(const Build& build, double barrel_radius) {
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  std::vector<double> sum(stations, 0.0);
  std::vector<int> count(stations, 0);
  const std::size_t last = build.strokes.size() - 1;
  for (std::size_t k = build.strokes[last].first_node; k < build.end_of(last); ++k) {
    sum[k % stations] += build.nodes.r(k) - barrel_radius;
    ++count[k % stations];
  }
  for (std::size_t j = 0; j < stations; ++j) sum[j] /= std::max(1, count[j]);
  return sum;
}

}  // namespace

// Parallel-turn winding: straight part 300-330 deg, crossover 30-60 deg (secondary article on orthocyclic winding); the
// crossover zone stands 5-10 % higher (from memory of the Handbook of Coil Winding, Springer 2018).
TEST_CASE("parallel turns stand higher where they cross, by about what the handbook says") {
  const auto laid = wound(testing::mini_spool());

  const double straight = 4.0 * std::sqrt(0.75) + 0.5;
  const std::vector<double> height = height_of_last_layer(laid.build, 50.0);
  double in_crossover = 0.0;
  double most = 0.0;
  int higher = 0;
  const auto stations = static_cast<int>(height.size());
  const int first_crossing = stations * 7 / 8;
  for (int j = 0; j < stations; ++j) {
    const double h = height[static_cast<std::size_t>(j)];
    if (j > first_crossing) in_crossover += h / (stations - 1 - first_crossing);
    most = std::max(most, h);
    higher += h > straight + 0.02 ? 1 : 0;
  }
  // Heights with the top half of the wire on, as one would measure them.
  const double mean_percent = 100.0 * ((in_crossover + 0.5) / (straight + 0.5) - 1.0);
  const double most_percent = 100.0 * ((most + 0.5) / (straight + 0.5) - 1.0);
  const double degrees = 360.0 * higher / stations;
  WARN("crossover zone: " << degrees << " deg around, " << mean_percent << " % higher on average, " << most_percent
                          << " % at most");
  CHECK(degrees > 45.0);
  CHECK(degrees < 90.0);
  CHECK(mean_percent > 3.0);
  CHECK(most_percent < 15.0);
}
