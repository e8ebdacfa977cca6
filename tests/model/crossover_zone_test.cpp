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

// Degrees of the spool at which more than half of a layer's turns lie between two grooves, a tenth of d or more from
// either. Precondition: stepped turns one d apart, half a turn from the flanges, on n + 1/2 of them.
double crossing_deg(const Build& build, std::size_t layer) {
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const double d = build.fiber_diameter_mm;
  std::vector<int> between(stations, 0);
  std::vector<int> all(stations, 0);
  for (std::size_t k = build.strokes[layer].first_node; k < build.end_of(layer); ++k) {
    const double place = build.nodes.x(k) / d - (layer % 2 == 0 ? 0.5 : 0.0);
    between[k % stations] += std::abs(place - std::round(place)) > 0.1 ? 1 : 0;
    ++all[k % stations];
  }
  int crossing = 0;
  for (std::size_t j = 0; j < stations; ++j) crossing += 2 * between[j] > all[j] ? 1 : 0;
  return 360.0 * crossing / static_cast<double>(stations);
}

}  // namespace

// 30 to 60 degrees (secondary article on orthocyclic winding), and no more of them in layer 19 than in layer 2. What does
// grow is the slope on either side of the crossings, which turns in their grooves climb: each layer lies on the last one's.
TEST_CASE("stepped turns cross within as many degrees in every layer") {
  constexpr double d = 0.56;
  PlanDraft draft;
  draft.spool.barrel_diameter_mm = 20.0;
  draft.spool.flange_diameter_mm = 60.0;
  draft.spool.inside_width_mm = 40.5 * d;
  draft.fiber.diameter_mm = d;
  draft.fiber.friction = 0.3;
  draft.traverse.motion = Motion::stepped;
  draft.traverse.step_angle_rad = std::numbers::pi / 4.0;
  draft.traverse.pitch_mm = d;
  draft.traverse.left_stop_mm = 0.5 * d;
  draft.traverse.right_stop_mm = 0.5 * d;
  draft.traverse.free_length_mm = 30.0;
  draft.wind.turns = 20.0 * 40.0;
  for (const double fidelity : {1.0, 2.0}) {
    const Build build = wound(draft, fidelity).build;
    REQUIRE(build.strokes.size() >= 20);
    for (const std::size_t layer : {1U, 4U, 9U, 14U, 18U}) {
      const double degrees = crossing_deg(build, layer);
      INFO("fidelity " << fidelity << ", layer " << layer + 1 << ": " << degrees << " deg");
      CHECK(degrees > 25.0);
      CHECK(degrees < 60.0);
    }
  }
}

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
