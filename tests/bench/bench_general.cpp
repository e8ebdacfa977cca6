// The lay model beside a general-purpose physics library (Box2D), on one axial section of a wind: the same turns, of
// the long sample on a narrower spool, each arriving at the guide's x in the order of the wind.
//
//   lay            the whole wind with its string, in all stations; the time is that of one node, the section that of
//                  one station
//   section        the model's section alone, without a string: each circle is set down at the guide's x, pressed
//                  straight down, and slides until friction holds it
//   Box2D, stays   the same in the library; what lies is ground
//   Box2D, moves   the same, and what lies can be pushed: one circle every ten steps, then until all rest
//
// The second and the third do the same work, so theirs is the ratio that says what the section's geometry gains over
// general dynamics. The first does more: the path of the fiber around the spool, which the library is not asked for.
// The fourth does what the model leaves out: later turns move earlier ones. Last, circles dropped at random without
// friction, whose packing is known: .818 (random_drop.cpp says from where). Times are of the processor, medians; d is
// the fiber's diameter.
//
//   bench_general [COUNT...]     200, 2000 and 10000 circles by default
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <functional>
#include <numbers>
#include <stdexcept>
#include <string>
#include <vector>

#include "arrivals.h"
#include "base/random.h"
#include "lay/lay.h"
#include "lay/settle.h"
#include "physics_pile.h"
#include "pile_figures.h"
#include "plan/plan_file.h"

namespace {

using namespace laywright;
using bench::PhysicsPile;
using bench::Place;

constexpr double pressed = 1e6;  // d: so far below is the pull that it is straight down wherever a circle slides
constexpr std::size_t most_that_move = 2000;  // more take minutes
constexpr std::size_t at_random = 10'000;     // enough for an inside

struct Timed {
  std::vector<Place> places;
  double each_ns = 0.0;
  std::string note;
};

// About as many turns to a layer as layers. As on the long spool itself, a stroke is no whole number of turns, so that
// each layer lies otherwise on the one below.
Plan plan_of(std::size_t circles, double friction) {
  Result<Plan> plan = load_plan(LAYWRIGHT_SAMPLES "/long.lay.toml");
  if (!plan.ok()) throw std::runtime_error(to_text(plan.issues().front()));
  PlanDraft draft = plan.value().draft();
  const double pitches = draft.spool.inside_width_mm / draft.traverse.pitch_mm;
  const double left_over = pitches - std::floor(pitches);
  draft.spool.inside_width_mm =
      (std::round(std::sqrt(static_cast<double>(circles))) + left_over) * draft.traverse.pitch_mm;
  draft.fiber.friction = friction;
  draft.wind.length_mm.reset();
  draft.wind.turns = static_cast<double>(circles);
  return check(draft).value();
}

// `work` gives the places that it makes and how many pieces of work there were.
Timed timed(int times, const std::function<std::size_t(Timed&)>& work) {
  Timed result;
  std::vector<double> each;
  for (int i = 0; i < times; ++i) {
    const std::clock_t start = std::clock();
    const std::size_t pieces = work(result);
    each.push_back(1e9 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / static_cast<double>(pieces));
  }
  std::sort(each.begin(), each.end());
  result.each_ns = each[each.size() / 2];
  return result;
}

Timed lay_whole(const Plan& plan, std::size_t circles) {
  Build build;
  Timed result = timed(3, [&](Timed&) {
    Progress progress;
    build = lay(plan, {}, progress).value();
    return build.nodes.size();
  });
  result.places = bench::section_at(plan, build, 0);
  result.places.resize(std::min(result.places.size(), circles));
  result.note = fmt::format("{} stations a turn", build.stations_per_turn);
  return result;
}

Timed in_section(const std::vector<double>& xs, double width, double friction) {
  const FrictionCone cone(friction);
  // Short, so that it is done often enough for the clock.
  const std::size_t rounds = std::max<std::size_t>(1, 200'000 / xs.size());
  return timed(5, [&](Timed& result) {
    for (std::size_t round = 0; round < rounds; ++round) {
      result.places.clear();
      Section section(1.0, BarrelLine{0.5, 0.0}, FaceLine{0.5, 0.0}, FaceLine{width - 0.5, 0.0});
      for (const double x : xs) {
        Resting rest = set_down(section, x);
        settle(section, rest, x, rest.r - pressed, cone);
        section.insert(rest.x, rest.r, 0);
        result.places.push_back({rest.x, rest.r});
      }
    }
    return rounds * xs.size();
  });
}

Timed in_general(const std::vector<double>& xs, double width, double friction, PhysicsPile::Laid laid) {
  return timed(xs.size() <= most_that_move && laid == PhysicsPile::Laid::stays ? 3 : 1, [&](Timed& result) {
    PhysicsPile pile(width, friction, laid);
    for (const double x : xs) pile.drop(x);
    pile.come_to_rest();
    result.places = pile.places();
    result.note = fmt::format("{:.0f} steps a circle, {} left moving",
                              static_cast<double>(pile.steps()) / static_cast<double>(xs.size()), pile.restless());
    return xs.size();
  });
}

void print(const char* name, const Timed& timed, const Timed& section, double width) {
  fmt::print(
      "  {:<13} {:9.0f} ns each, {:7.1f} times the section   fill {:.4f}   mean height {:6.2f} d   deepest {:8.1e} "
      "d   {}\n",
      name, timed.each_ns, timed.each_ns / section.each_ns, bench::fill(timed.places, width),
      bench::mean_height(timed.places, width), bench::deepest(timed.places, width), timed.note);
}

void compare(std::size_t circles, double friction) {
  const Plan plan = plan_of(circles, friction);
  const double width = bench::width_d(plan);
  const std::vector<double> xs = bench::arrivals(plan, circles);
  fmt::print("{} circles, {:.1f} d wide, friction {}\n", circles, width, friction);
  const Timed section = in_section(xs, width, friction);
  print("lay", lay_whole(plan, circles), section, width);
  print("section", section, section, width);
  print("Box2D, stays", in_general(xs, width, friction, PhysicsPile::Laid::stays), section, width);
  if (circles <= most_that_move)
    print("Box2D, moves", in_general(xs, width, friction, PhysicsPile::Laid::moves), section, width);
}

void compare_random(std::size_t circles) {
  const double width = std::round(std::sqrt(static_cast<double>(circles)));
  Random random(1);
  std::vector<double> xs;
  for (std::size_t i = 0; i < circles; ++i) xs.push_back(0.5 + (width - 1.0) * random.uniform());
  fmt::print("{} circles at random, {:.1f} d wide, no friction; known: .818 away from the edges\n", circles, width);
  const Timed section = in_section(xs, width, 0.0);
  const Timed general = in_general(xs, width, 0.0, PhysicsPile::Laid::stays);
  print("section", section, section, width);
  print("Box2D, stays", general, section, width);
  fmt::print("  away from the edges: section {:.3f}, Box2D {:.3f}\n", bench::packing(section.places, width),
             bench::packing(general.places, width));
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<std::size_t> counts;
  for (int i = 1; i < argc; ++i) counts.push_back(std::stoul(argv[i]));
  if (counts.empty()) counts = {200, 2000, 10'000};
  for (const double friction : {0.5, 0.3}) {
    for (const std::size_t circles : counts) compare(circles, friction);
  }
  compare_random(at_random);
}
