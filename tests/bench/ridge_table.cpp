// Ridges at flanges by the number of stations: the mean of both flanges over winds whose pitch differs by less than can be set.
// A dwell of five turns, friction .5; a wide spool with a long free length, where the fiber can follow a groove away from the
// guide, and a narrow one with a short one, where it cannot. Prints mean, standard error and greatest of the winds, in d.
//
//   ridge_table [WINDS]   of each line (16); a quarter of them, 3 at least, at four times the stations
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "ridge_plans.h"
#include "spread.h"

namespace {

using namespace laywright;
using namespace laywright::bench;

constexpr double dwell_turns = 5.0, pitch_share = 1e-3;
constexpr std::array stations{0.5, 1.0, 2.0, 4.0};

struct Winding {
  double width_mm, free_length_mm, turns;
};
constexpr std::array windings{Winding{95.0, 100.0, 8000.0}, Winding{30.0, 20.0, 1500.0}};

double ridge_d(const Winding& winding, double fidelity, int wind) {
  PlanDraft draft = spool(winding.width_mm, dwell_turns, 0.5 * d_mm, 0.5 * d_mm);
  draft.traverse.free_length_mm = winding.free_length_mm;
  draft.traverse.pitch_mm = pitch_mm * (1.0 + 2.0 * pitch_share * (evenly(wind) - 0.5));
  draft.wind.turns = winding.turns;
  const Plan plan = sound(draft);
  Progress progress;
  const Build build = lay(plan, {1, fidelity}, progress).value();
  const EdgeShapes edges = measure(plan, build, progress).edges.value();
  return 0.5 * (edges[0].ridge_mm + edges[1].ridge_mm) / d_mm;
}

}  // namespace

int main(int argc, char** argv) {
  const int asked = std::max(3, argc > 1 ? std::atoi(argv[1]) : 16);
  fmt::print("{:>9} {:>8} {:>9} {:>6} {:>8} {:>8} {:>9}\n", "width mm", "free mm", "stations", "winds", "ridge d",
             "error", "greatest");
  for (const Winding& winding : windings) {
    for (const double fidelity : stations) {
      const int winds = fidelity < 4.0 ? asked : std::max(3, asked / 4);
      std::vector<double> ridges;
      for (int wind = 0; wind < winds; ++wind) ridges.push_back(ridge_d(winding, fidelity, wind));
      const auto [mean, deviation] = spread_of(ridges);
      fmt::print("{:>9} {:>8} {:>9} {:>6} {:>8.2f} {:>8.2f} {:>9.2f}\n", winding.width_mm, winding.free_length_mm,
                 fidelity, winds, mean, deviation / std::sqrt(winds),
                 *std::max_element(ridges.begin(), ridges.end()));
      std::fflush(stdout);
    }
  }
}
