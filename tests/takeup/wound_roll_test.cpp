// The wound-roll integral against closed forms, and against finite differences of the equation itself, layer by layer.
#include <cmath>
#include <vector>

#include <Eigen/SparseLU>
#include <catch2/catch.hpp>

#include "takeup/wound_roll.h"

using namespace laywright;

namespace {

WoundRoll roll(double g, double k, double outer) {
  return {g, k, outer, [](double) { return 1.0; }};
}

double rounded6(double value) { return std::round(value * 1e6) / 1e6; }

// Pressure at every node of [1, outer] by finite differences: each further node is wound on as a ring, whose pressure
// S h / s presses r^2 P'' + 3 r P' - (g^2 - 1) P = 0 below it, with r P' = (e - 1 + nu) P at the core. The half rings
// at both ends of the sum make it a trapezoid rule.
std::vector<double> by_differences(const WoundRoll& roll, double core_condition, int intervals) {
  using Matrix = Eigen::SparseMatrix<double>;
  const double h = (roll.outer_radius - 1.0) / intervals, g = roll.stiffness_ratio;
  const auto radius = [&](int i) { return 1.0 + i * h; };
  std::vector<double> total(static_cast<std::size_t>(intervals) + 1, 0.0);
  for (int outer = 1; outer <= intervals; ++outer) {
    std::vector<Eigen::Triplet<double>> entries;
    for (int i = 0; i < outer; ++i) {
      const double r = radius(i), second = r * r / (h * h), first = 1.5 * r / h;
      double below = second - first, at = -2.0 * second - (g * g - 1.0), above = second + first;
      if (i == 0) {  // the node inside the core, from its condition: P(-1) = P(1) - 2 h c P(0)
        at -= below * 2.0 * h * core_condition;
        above += below;
        below = 0.0;
      }
      if (i > 0) entries.emplace_back(i, i - 1, below);
      entries.emplace_back(i, i, at);
      entries.emplace_back(i, i + 1, above);
    }
    entries.emplace_back(outer, outer, 1.0);
    Matrix matrix(outer + 1, outer + 1);
    matrix.setFromTriplets(entries.begin(), entries.end());
    Eigen::VectorXd right = Eigen::VectorXd::Zero(outer + 1);
    right(outer) = roll.wound_stress(radius(outer)) / radius(outer) * h * (outer == intervals ? 0.5 : 1.0);
    Eigen::SparseLU<Matrix> solver(matrix);
    REQUIRE(solver.info() == Eigen::Success);
    const Eigen::VectorXd pressure = solver.solve(right);
    for (int i = 0; i < outer; ++i) total[static_cast<std::size_t>(i)] += pressure(i);
    // Of the ring at the node itself, half presses on it.
    total[static_cast<std::size_t>(outer)] += outer == intervals ? 0.0 : 0.5 * right(outer);
  }
  // The ring on the core's own surface.
  total[0] += 0.5 * roll.wound_stress(1.0) * h;
  return total;
}

}  // namespace

TEST_CASE("pressure of a winding in closed forms") {
  // P/S from the integral by hand; the model is Hakiel's, TAPPI Journal 1987 (from memory).
  CHECK(rounded6(roll_pressure(roll(1.0, 0.0, 1.5), 1.0)) == 0.405465);
  CHECK(rounded6(roll_pressure(roll(1.0, -1.0, 2.0), 1.2)) == 0.293271);
  CHECK(rounded6(roll_pressure(roll(1.0, 1.0, 2.0), 1.0)) == 0.916291);
  CHECK(rounded6(roll_pressure(roll(3.0, 1.0, 2.0), 1.0)) == 0.586617);
  CHECK(rounded6(roll_pressure(roll(3.0, 1.0, 2.0), 1.5)) == 0.227766);
  CHECK(rounded6(roll_pressure(roll(10.0, 0.0, 2.0), 1.0)) == 0.110894);
}

TEST_CASE("pressure at the free ends: none outside, none on a core that is not there") {
  CHECK(roll_pressure(roll(3.0, 1.0, 2.0), 2.0) == 0.0);
  CHECK(roll_pressure(roll(3.0, -1.0, 2.0), 1.0) == 0.0);
  CHECK(roll_pressure(roll(3.0, -1.0, 2.0), 1.001) < 0.01);
}

TEST_CASE("the support of a core") {
  CHECK(core_support(1.0, 0.0, 0.0) == 1.0);
  CHECK(core_support(7.0, 0.0, 0.0) == 1.0);
  CHECK(core_support(3.0, 1e12, 0.0) == Approx(-1.0));
}

TEST_CASE("finite differences of the equation agree, for pulls that change with radius, too") {
  struct Case {
    double g, hoop_over_core, poisson;
  };
  for (const Case& c : {Case{1.0, 0.0, 0.0}, Case{3.0, 0.0, 0.0}, Case{3.0, 0.5, 0.3}, Case{10.0, 2.0, 0.1}}) {
    for (const double taper : {0.0, 0.4, 1.0}) {
      CAPTURE(c.g, c.hoop_over_core, taper);
      const WoundRoll winding{c.g, core_support(c.g, c.hoop_over_core, c.poisson), 1.6,
                              [&](double s) { return 2.0 * (1.0 - taper * (1.0 - 1.0 / s)); }};
      const int intervals = 240;
      const std::vector<double> referee = by_differences(winding, c.hoop_over_core - 1.0 + c.poisson, intervals);
      for (const int node : {0, 60, 120, 200}) {
        const double radius = 1.0 + 0.6 * node / intervals;
        CAPTURE(radius);
        CHECK(roll_pressure(winding, radius) ==
              Approx(referee[static_cast<std::size_t>(node)]).epsilon(2e-3).margin(1e-4));
      }
    }
  }
}

TEST_CASE("hoop stress balances the pressure") {
  // Balance of half a winding: the hoop stress over its thickness carries the pressure on the core.
  for (const double g : {1.0, 3.0, 10.0}) {
    for (const double k : {1.0, 0.3, -0.5}) {
      CAPTURE(g, k);
      const WoundRoll winding{g, k, 1.8, [](double s) { return 3.0 / s; }};
      const int intervals = 400;
      double carried = 0.0;
      for (int i = 0; i <= intervals; ++i) {
        const double weight = i == 0 || i == intervals ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
        carried += weight * roll_hoop_stress(winding, 1.0 + 0.8 * i / intervals);
      }
      carried *= 0.8 / intervals / 3.0;
      CHECK(carried == Approx(roll_pressure(winding, 1.0)).epsilon(1e-4));
      CHECK(roll_hoop_stress(winding, 1.8) == Approx(3.0 / 1.8));
    }
  }
}
