// Laid turns that may move, as discs: statics and closed forms.
#include <cmath>
#include <numbers>
#include <vector>

#include <catch2/catch.hpp>

#include "lay/grains.h"
#include "lay/torsion.h"
#include "usual_fiber.h"

using namespace laywright;
using laywright::testing::usual::d;

namespace {

constexpr double wide = 20.0;
constexpr double barrel = 75.0;
constexpr double floor_r = barrel + 0.5 * d;
constexpr double far_from_slack = 100.0;

std::vector<Section> bare(std::size_t stations) {
  return std::vector<Section>(
      stations, Section(d, BarrelLine{floor_r, 0.0}, FaceLine{0.5 * d, 0.0}, FaceLine{wide - 0.5 * d, 0.0}));
}

GrainLaw law(double friction, double slack_mm = far_from_slack) { return {d, friction, true, slack_mm, 0.0, 0.0}; }

// Two discs side by side on the barrel and one on both: how high the upper one comes to rest, in d over the others.
double height_of_three(double friction) {
  const std::vector<Section> sections = bare(1);
  Grains grains(law(friction), sections);
  const double half_apart = 0.5 * d * 1.003;
  grains.add(0, 10.0 - half_apart, floor_r, floor_r, 0.5 * d, true);
  grains.add(0, 10.0 + half_apart, floor_r, floor_r, 0.5 * d, true);
  const double r = floor_r + std::sqrt(d * d - half_apart * half_apart);
  const int top = grains.add(0, 10.0, r, r, 0.5 * d, true);
  Progress progress;
  REQUIRE(grains.come_to_rest(progress));
  return (grains[top].r - floor_r) / d;
}

}  // namespace

// Three equal cylinders, two beside one another and one on both, stand where friction is at least tan 15 degrees, .268
// (statics, a classic; balance of a lower one about its centre: what turns it at the upper contact must be held at the
// lower one, N sin 30 = F (1 + cos 30)).
TEST_CASE("three discs stand above a friction of tan 15 degrees and part below it") {
  CHECK(height_of_three(0.30) == Approx(std::sqrt(3.0) / 2.0).margin(0.01));
  CHECK(height_of_three(0.28) == Approx(std::sqrt(3.0) / 2.0).margin(0.01));
  CHECK(height_of_three(0.20) < 0.5);
  CHECK(height_of_three(0.0) < 0.1);
}

TEST_CASE("a disc falls as far as it stays taut, and no further") {
  const std::vector<Section> sections = bare(1);
  for (const double slack : {0.5 * d, 2.0 * d}) {
    Grains grains(law(0.5, slack), sections);
    const double r = floor_r + 20.0 * d;
    const int disc = grains.add(0, 10.0, r, r, 0.5 * d, true);
    Progress progress;
    REQUIRE(grains.come_to_rest(progress));
    INFO("slack " << slack << ", fell " << r - grains[disc].r);
    CHECK(r - grains[disc].r > 0.6 * slack);
    CHECK(r - grains[disc].r < 1.001 * slack);
  }
  Grains grains(law(0.5), sections);
  const int disc = grains.add(0, 10.0, floor_r + 2.0 * d, floor_r + 2.0 * d, 0.5 * d, true);
  Progress progress;
  REQUIRE(grains.come_to_rest(progress));
  CHECK(grains[disc].r == Approx(floor_r).margin(0.01 * d));
}

TEST_CASE("a close-packed package between its flanges stays where it is") {
  const double apart = 1.003 * d;
  const std::vector<Section> sections(
      1, Section(d, BarrelLine{floor_r, 0.0}, FaceLine{0.5 * d, 0.0}, FaceLine{0.5 * d + 11.0 * apart, 0.0}));
  Grains grains(law(0.1), sections);
  int turns = 0;
  for (int row = 0; row < 8; ++row) {
    for (int i = 0; i < 12 - row % 2; ++i, ++turns) {
      const double x = 0.5 * d + (i + 0.5 * (row % 2)) * apart;
      const double r = floor_r + row * std::sqrt(d * d - 0.25 * apart * apart);
      grains.add(0, x, r, r, 0.5 * d, true);
    }
  }
  Progress progress;
  REQUIRE(grains.come_to_rest(progress));
  double farthest = 0.0;
  for (int i = 0; i < turns; ++i) {
    farthest = std::max(farthest, std::hypot(grains[i].x - grains[i].x_from, grains[i].r - grains[i].r_from));
  }
  CHECK(farthest < 0.05 * d);
}

// critical_length_mm (torsion.h): held at both ends, a longer stretch falls off a turn, a shorter one stays on it.
TEST_CASE("a stretch on a turn falls where it is longer than the critical length") {
  constexpr double twist = 8.0;  // K / T
  constexpr double step = 1.0;   // mm
  constexpr double lean = 0.1 * d;
  const double on_turn = floor_r + std::sqrt(d * d - lean * lean);
  const double critical = critical_length_mm(twist, d, barrel);
  for (const double share : {0.8, 1.25}) {
    const auto nodes = static_cast<std::size_t>(std::lround(share * critical / step)) - 1;
    const std::vector<Section> sections = bare(nodes);
    GrainLaw of_fiber = law(2.0);
    of_fiber.string_stiffness = barrel / (step * step);
    of_fiber.twist_stiffness = twist * of_fiber.string_stiffness;
    Grains grains(of_fiber, sections);
    std::vector<int> fiber;
    for (std::size_t s = 0; s < nodes; ++s) {
      grains.add(s, 10.0, floor_r, floor_r, 0.5 * d, false);
      fiber.push_back(grains.add(s, 10.0 + lean, on_turn, on_turn, 0.5 * d, true));
      if (s > 0) grains.join(fiber[s - 1], fiber[s]);
    }
    Progress progress;
    REQUIRE(grains.come_to_rest(progress));
    const double sunk = (on_turn - grains[fiber[nodes / 2]].r) / d;
    INFO(share << " of the critical length, " << critical << " mm; sunk in the middle by " << sunk << " d");
    if (share < 1.0) CHECK(sunk < 0.1);
    if (share > 1.0) CHECK(sunk > 0.5);
  }
}

TEST_CASE("what comes to rest can be stopped") {
  const std::vector<Section> sections = bare(1);
  Grains grains(law(0.5), sections);
  grains.add(0, 10.0, floor_r + 2.0 * d, floor_r + 2.0 * d, 0.5 * d, true);
  Progress progress;
  progress.cancel();
  CHECK_FALSE(grains.come_to_rest(progress));
}
