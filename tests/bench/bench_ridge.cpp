// Ridges at flanges and heaps away from them: the lay model beside discs that roll, in a general-purpose physics library.
//
//   lay            the wind, mean over some of its stations
//   lay, near      the same with the guide close to the spool
//   near, soft     the same of a fiber so soft that laid turns give way, and with hardly any twist
//   section        one section of the model without a string and without friction: a disc rolls down to the first valley
//   Box2D, stays   discs with the fiber's friction that roll freely; what lies at rest is ground, as in the lay model
//   Box2D, moves   the same, and what lies can be pushed
//
// All are given the same turns in the same order: a disc for each time that the guide passes the section, set down at the
// guide's x, and pressed toward the barrel. A disc leans to one side by a hundredth or two of a diameter, drawn at random,
// as exactly on top of another is no rest.
//
// What the library's section cannot have is the fiber's length. On a spool a turn may lie against the one before, away
// from the guide, until the fleet angle lifts it over: near sqrt(2 d / R) (derived), some 33 d at 100 mm of fiber. So a
// guide that stands lays turn beside turn, and what is too much at one flange may be carried inward and to the other:
// ridges lower than the library's. With 5 mm ("near") the guide holds a turn within 2 d, and so, with the twist that so
// short a way takes, from a long face: ridges higher than the library's. Its figures should lie between the two.
//
// Each draw shifts the stops by up to .04 d and takes the section at another angle; given are means over draws and their
// standard deviation. Discs that can be pushed take the time: of them there are fewer draws.
//
// Known: a heap of hard discs that come to rest one by one on a random base stands at about 52 degrees, its packing is
// .80 (Acharyya, "Structural properties of planar random heap of hard discs", abstract). Derived: a close-packed pile
// holds a disc that rolls as long as the pull lies between the normals of the two discs below, 30 degrees to either hand:
// so a face of 60 degrees where rows lie level, and a row that slopes by 30 degrees.
//
//   bench_ridge [DRAWS [DRAWS THAT MOVE]]      8 and 2 by default
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <numbers>
#include <string>
#include <vector>

#include "arrivals.h"
#include "base/random.h"
#include "lay/lay.h"
#include "lay/settle.h"
#include "physics_pile.h"
#include "ridge_figures.h"
#include "ridge_plans.h"
#include "spread.h"

namespace {

using namespace laywright;
using namespace laywright::bench;

constexpr int stations_seen = 32;
constexpr double pressed = 1e6;  // d: so far below is the pull that it is straight down wherever a disc slides
constexpr std::size_t discs_on_random_base = 1200;

std::vector<double> leaning(std::vector<double> xs, double width, Random& random) {
  for (double& x : xs) {
    const double lean = uniform(random, 0.01, 0.02);
    x += random.uniform() < 0.5 ? -lean : lean;
    // From a flange, inward.
    if (x < 0.5) x = 0.5 + lean;
    if (x > width - 0.5) x = width - 0.5 - lean;
  }
  return xs;
}

std::vector<Place> in_section(const std::vector<double>& base, const std::vector<double>& xs, double width) {
  const FrictionCone none(0.0);
  Section section(1.0, BarrelLine{0.5, 0.0}, FaceLine{0.5, 0.0}, FaceLine{width - 0.5, 0.0});
  std::vector<Place> places;
  const auto keep = [&](double x, double r) {
    section.insert(x, r, 0);
    places.push_back({x, r});
  };
  for (const double x : base) keep(x, 0.5);
  for (const double x : xs) {
    Resting rest = set_down(section, x);
    settle(section, rest, x, rest.r - pressed, none);
    keep(rest.x, rest.r);
  }
  return places;
}

std::vector<Place> in_general(const std::vector<double>& base, const std::vector<double>& xs, double width,
                              PhysicsPile::Laid laid) {
  PhysicsPile pile(width, friction, laid, PhysicsPile::Turning::rolls);
  for (const double x : base) pile.fix(x);
  for (const double x : xs) pile.drop(x);
  pile.come_to_rest();
  if (pile.restless() > 0) fmt::print("  ({} left moving)\n", pile.restless());
  return pile.places();
}

// Figures of a section, or of several on average.
using Figures = std::vector<double>;
using Measure = std::function<Figures(const std::vector<Place>&)>;

Figures in_lay(const Plan& plan, std::uint64_t seed, const Measure& measure) {
  Progress progress;
  const Build build = lay(plan, {seed}, progress).value();
  Figures mean;
  for (int i = 0; i < stations_seen; ++i) {
    const Figures one = measure(section_at(plan, build, i * build.stations_per_turn / stations_seen));
    mean.resize(one.size(), 0.0);
    for (std::size_t k = 0; k < one.size(); ++k) mean[k] += one[k] / stations_seen;
  }
  return mean;
}

std::string mean_and_spread(const std::vector<Figures>& draws, std::size_t figure) {
  if (draws.empty()) return "";
  std::vector<double> of_draws;
  for (const Figures& draw : draws) of_draws.push_back(draw[figure]);
  const auto [mean, deviation] = spread_of(of_draws);
  return fmt::format("{:.1f} +- {:.1f}", mean, deviation);
}

// Figures of all draws, by each way.
struct Ways {
  std::vector<Figures> lay, near, soft, section, stays, moves;
};

void print(const std::string& head, const Ways& ways, const std::vector<const char*>& names) {
  for (std::size_t k = 0; k < names.size(); ++k)
    fmt::print("{:<24}{:<22}{:>15}{:>15}{:>15}{:>15}{:>15}{:>15}\n", k == 0 ? head : "", names[k],
               mean_and_spread(ways.lay, k), mean_and_spread(ways.near, k), mean_and_spread(ways.soft, k),
               mean_and_spread(ways.section, k), mean_and_spread(ways.stays, k), mean_and_spread(ways.moves, k));
  std::fflush(stdout);
}

void compare(const std::string& head, int draws, int moving, const std::function<Plan(Random&)>& plan_of,
             const Measure& measure, const std::vector<const char*>& names) {
  Ways ways;
  for (int draw = 0; draw < draws; ++draw) {
    Random random(static_cast<std::uint64_t>(draw + 1));
    const Plan plan = plan_of(random);
    const double width = width_d(plan);
    const auto discs = static_cast<std::size_t>(*plan.wind().turns);
    const std::vector<double> xs =
        leaning(arrivals(plan, discs, 2.0 * std::numbers::pi * draw / draws), width, random);
    ways.lay.push_back(in_lay(plan, static_cast<std::uint64_t>(draw + 1), measure));
    PlanDraft near = plan.draft();
    near.traverse.free_length_mm = near_length_mm;
    ways.near.push_back(in_lay(sound(near), static_cast<std::uint64_t>(draw + 1), measure));
    ways.soft.push_back(in_lay(sound(softened(near)), static_cast<std::uint64_t>(draw + 1), measure));
    ways.section.push_back(measure(in_section({}, xs, width)));
    ways.stays.push_back(measure(in_general({}, xs, width, PhysicsPile::Laid::stays)));
    if (draw < moving) ways.moves.push_back(measure(in_general({}, xs, width, PhysicsPile::Laid::moves)));
  }
  print(head, ways, names);
}

void compare_ridges(int draws, int moving) {
  constexpr double width = ridge_width_mm / d_mm;
  const Measure measure = [](const std::vector<Place>& places) {
    const Ridge ridge = ridge_of(places, width);
    return Figures{ridge.left, ridge.right, ridge.slope_deg, ridge.area,
                   static_cast<double>(longest_column(places))};
  };
  for (const double dwell : {0.0, 2.0, 5.0, 10.0})
    compare(fmt::format("dwell {}", dwell), draws, moving, [&](Random& random) { return ridge_plan(dwell, random); },
            measure, {"ridge left, d", "ridge right, d", "face, deg", "area, d^2", "longest column"});
}

// Of discs that lie on `base`, and of the last `turns` of them, how many in the heap's lowest layer.
Figures heap_figures(const std::vector<Place>& places, double width, double base, double reach, std::size_t turns) {
  const double middle = 0.5 * width;
  const Heap heap = heap_of(places, width, middle, base, reach);
  const std::vector<Place> last(places.end() - static_cast<std::ptrdiff_t>(turns), places.end());
  const auto lowest =
      std::count_if(last.begin(), last.end(), [base](const Place& place) { return place.r < base + 0.9; });
  return {heap.height,
          heap.width_half_up,
          heap.slope_deg,
          heap.mean_slope_deg,
          heap.lean,
          static_cast<double>(lowest),
          static_cast<double>(longest_column(last))};
}

const std::vector<const char*> heap_names{"height, d",       "width half way up, d", "steepest face, deg",
                                          "whole face, deg", "lean to right, d",     "turns in lowest layer",
                                          "longest column"};

void compare_heaps(int draws, int moving) {
  constexpr double width = heap_width_mm / d_mm;
  const auto over = [](double base) {
    return [base](const std::vector<Place>& places) {
      return heap_figures(places, width, base, heap_reach, heap_turns);
    };
  };
  compare("heap on bare barrel", draws, moving, bare_heap_plan, over(0.0), heap_names);
  compare("heap on a layer", draws, moving, layer_heap_plan, over(1.0), heap_names);
}

// As many as there is room for, at random, none overlapping.
std::vector<double> random_base(double width, Random& random) {
  std::vector<double> base;
  for (int tries = 0; tries < 100'000; ++tries) {
    const double x = uniform(random, 0.5, width - 0.5);
    if (std::all_of(base.begin(), base.end(), [x](double other) { return std::abs(x - other) >= 1.0; }))
      base.push_back(x);
  }
  return base;
}

void known_heap(int draws) {
  constexpr double width = 160.0;
  const Measure measure = [](const std::vector<Place>& places) {
    Figures figures = heap_figures(places, width, 1.0, 0.5 * width - 1.0, discs_on_random_base);
    figures.push_back(packing_between(places, 0.5 * width - 8.0, 0.5 * width + 8.0, 5.0, 20.0));
    return figures;
  };
  Ways ways;
  for (int draw = 0; draw < draws; ++draw) {
    Random random(static_cast<std::uint64_t>(draw + 1));
    const std::vector<double> base = random_base(width, random);
    const std::vector<double> xs = leaning(std::vector<double>(discs_on_random_base, 0.5 * width), width, random);
    ways.section.push_back(measure(in_section(base, xs, width)));
    ways.stays.push_back(measure(in_general(base, xs, width, PhysicsPile::Laid::stays)));
  }
  std::vector<const char*> names = heap_names;
  names.push_back("packing, percent");
  print("heap on a random base", ways, names);
  fmt::print("known: whole face about 52 deg, packing 80 percent\n");
}

}  // namespace

int main(int argc, char** argv) {
  const int draws = argc > 1 ? std::stoi(argv[1]) : 8;
  const int moving = argc > 2 ? std::stoi(argv[2]) : 2;
  fmt::print("friction {}; ridges of {} strokes, {} d wide; heaps of {} turns, the known one of {} discs\n",
             friction, strokes, ridge_width_mm / d_mm, heap_turns, discs_on_random_base);
  fmt::print("{:<46}{:>15}{:>15}{:>15}{:>15}{:>15}{:>15}\n", "", "lay", "lay, near", "near, soft", "section",
             "Box2D, stays", "Box2D, moves");
  compare_ridges(draws, moving);
  compare_heaps(draws, moving);
  known_heap(draws);
}
