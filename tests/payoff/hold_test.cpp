// The closed forms against statics written out, and published figures.
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "payoff/hold.h"

using namespace laywright;

namespace {

constexpr double deg = std::numbers::pi / 180.0;

// A disc between two walls whose normals lean by `lean`, pressed in by 1: friction bears up. Then drawn out with the same normal
// forces: friction bears down. Written from the balance of forces alone.
double drawn_out_by(double lean, double friction) {
  const double normal = 0.5 / (std::cos(lean) + friction * std::sin(lean));
  return 2.0 * normal * (friction * std::sin(lean) - std::cos(lean));
}

}  // namespace

TEST_CASE("a wedge holds when it opens by less than twice the angle of friction") {
  // tan 30 degrees: turns that touch, in whose groove a turn leans by 30, never jam below friction tan 60; a slit of 60 just does.
  CHECK(jamming_lean_rad(1.0 / std::sqrt(3.0)) == Approx(60.0 * deg));
  CHECK(jamming_lean_rad(0.0) == Approx(90.0 * deg));
  CHECK(jamming_lean_rad(std::sqrt(3.0)) == Approx(30.0 * deg));
}

TEST_CASE("what it takes to draw a turn out from between two is what the balance of forces says") {
  for (const double friction : {0.2, 0.5, 0.9, 2.0}) {
    for (const double lean : {35.0, 55.0, 64.0, 71.8, 80.0, 89.0, 90.0}) {
      CHECK(pull_out_share(lean * deg, friction) ==
            Approx(std::max(0.0, drawn_out_by(lean * deg, friction))).margin(1e-12));
    }
  }
  // Between parallel walls all of what pressed it in.
  CHECK(pull_out_share(90.0 * deg, 0.3) == Approx(1.0));
}

TEST_CASE("a slit grips as far as the coating gives way: a twentieth of the diameter over the cosine of its lean") {
  CHECK(grip_mm(60.0 * deg, 0.25) == Approx(0.025));
  CHECK(grip_mm(90.0 * deg, 0.25) == Approx(0.25));
  CHECK(grip_mm(89.0 * deg, 0.25) == Approx(0.25));
}

TEST_CASE("a slit in multiples of the tension: work over length, by hand") {
  // q/T = (1 + 99)/100 per mm, parallel walls: all of it over a diameter of .25 mm; steepness .5: .5 T.
  CHECK(slit_multiple({90.0 * deg, 99.0, 100.0}, 0.25, 0.5, 0.5) == Approx(0.5));
  // Twice the radius halves it; square off the surface doubles the leverage.
  CHECK(slit_multiple({90.0 * deg, 99.0, 200.0}, 0.25, 0.5, 0.5) == Approx(0.25));
  CHECK(slit_multiple({90.0 * deg, 99.0, 100.0}, 0.25, 0.5, 1.0) == Approx(0.25));
  CHECK(slit_multiple({60.0 * deg, 99.0, 100.0}, 0.25, 0.5, 0.5) == 0.0);
}

TEST_CASE("a bend multiplies as a capstan does") {
  CHECK(bend_multiple(0.0, 0.5) == 1.0);
  CHECK(bend_multiple(std::numbers::pi, 0.3) ==
        Approx(2.5663).epsilon(1e-4));  // half a turn, tables of the capstan equation
}

TEST_CASE("friction of a fiber that never slips counts as 1") {
  CHECK(payoff_friction(0.4) == 0.4);
  CHECK(payoff_friction(std::numeric_limits<double>::infinity()) == held_counts_as);
}
