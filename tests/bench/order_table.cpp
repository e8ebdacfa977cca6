// How long close layers keep their order, by the turns of the spool in a double stroke: the sample long, its pitch moved by less
// than a hundredth, its first layers. Prints crossings of the layer below in each turn (two where all is in order, MODEL.md) and turns
// that ride up, both of three winds, for several frictions and free lengths.
//
//   order_table [KM [STATIONS]]   length of each wind (5 km), stations over those that the model asks for (1)
#include <fmt/format.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "order_figures.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;
using bench::crossings_in_turn;

constexpr std::array whole_turns{727.0, 729.0, 731.0};
constexpr std::array beyond_whole{0.0, 0.1, 0.25, 0.5};

struct Setting {
  double friction, free_length_mm;
};
constexpr std::array settings{Setting{0.5, 50.0}, Setting{0.5, 20.0}, Setting{0.5, 100.0},
                              Setting{0.7, 50.0}, Setting{0.3, 50.0}, Setting{0.2, 50.0}};

struct Order {
  double crossings_below = 0.0, crossings_above = 0.0;  // in a turn, of layers up to the 20th and above
  double rides = 0.0, rides_at_flanges = 0.0;           // per km
};

Order order_of(const Plan& plan, double stations) {
  Progress progress;
  const Build build = lay(plan, {1, stations}, progress).value();
  const Measurements measured = measure(plan, build, progress);
  Order order;
  order.crossings_below = crossings_in_turn(measured, 1, 20);
  order.crossings_above = crossings_in_turn(measured, 20, measured.layers.size());
  const double width = plan.spool().inside_width_mm;
  bool before = false;
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    const bool rides = build.nodes.rides_up(k);
    if (rides && !before) {
      const double x = build.nodes.x(k);
      ((x < 0.05 * width || x > 0.95 * width) ? order.rides_at_flanges : order.rides) += 1e6 / build.length_mm;
    }
    before = rides;
  }
  return order;
}

}  // namespace

int main(int argc, char** argv) {
  const double km = argc > 1 ? std::atof(argv[1]) : 5.0;
  const double stations = argc > 2 ? std::atof(argv[2]) : 1.0;
  const PlanDraft sample = load_plan(LAYWRIGHT_SAMPLES "/long.lay.toml").value().draft();
  fmt::print("{} km, stations times {}; each the mean of {} winds\n", km, stations, whole_turns.size());
  fmt::print("{:>8} {:>8} {:>12} {:>11} {:>11} {:>14} {:>14}\n", "friction", "free mm", "over whole", "to layer 20",
             "above", "rides per km", "at flanges");
  for (const Setting& setting : settings) {
    for (const double beyond : beyond_whole) {
      Order mean;
      for (const double whole : whole_turns) {
        PlanDraft draft = sample;
        draft.fiber.friction = setting.friction;
        draft.traverse.free_length_mm = setting.free_length_mm;
        draft.wind.length_mm = km * 1e6;
        const Order one = order_of(check(bench::with_turns(draft, whole + beyond)).value(), stations);
        const double share = 1.0 / static_cast<double>(whole_turns.size());
        mean.crossings_below += share * one.crossings_below;
        mean.crossings_above += share * one.crossings_above;
        mean.rides += share * one.rides;
        mean.rides_at_flanges += share * one.rides_at_flanges;
      }
      fmt::print("{:>8} {:>8} {:>12} {:>11.2f} {:>11.2f} {:>14.0f} {:>14.0f}\n", setting.friction,
                 setting.free_length_mm, beyond, mean.crossings_below, mean.crossings_above, mean.rides,
                 mean.rides_at_flanges);
      std::fflush(stdout);
    }
  }
  return 0;
}
