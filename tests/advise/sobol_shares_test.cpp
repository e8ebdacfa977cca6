#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "advise/lattice.h"
#include "advise/sobol_shares.h"

using namespace laywright;

namespace {

// A function of inputs in [0, 1), at the rows of Saltelli's scheme.
template <class Function>
std::vector<double> sampled(std::size_t samples, std::size_t inputs, Function f) {
  std::vector<double> outputs;
  for (const auto& unit : lattice(samples, 2 * inputs, 1)) {
    const std::vector<double> a(unit.begin(), unit.begin() + static_cast<std::ptrdiff_t>(inputs));
    const std::vector<double> b(unit.begin() + static_cast<std::ptrdiff_t>(inputs), unit.end());
    outputs.push_back(f(a));
    outputs.push_back(f(b));
    for (std::size_t i = 0; i < inputs; ++i) {
      std::vector<double> mixed = a;
      mixed[i] = b[i];
      outputs.push_back(f(mixed));
    }
  }
  return outputs;
}

double ishigami(const std::vector<double>& u) {
  const auto x = [&](std::size_t i) { return std::numbers::pi * (2.0 * u[i] - 1.0); };
  return std::sin(x(0)) + 7.0 * std::pow(std::sin(x(1)), 2.0) + 0.1 * std::pow(x(2), 4.0) * std::sin(x(0));
}

}  // namespace

TEST_CASE("variance shares of the Ishigami function") {
  // Ishigami and Homma (1990), a = 7, b = 0.1. Its indices as published (Saltelli et al., Global Sensitivity Analysis: The
  // Primer, Wiley 2008, from its closed form): first .3139, .4424, 0; total .5576, .4424, .2437.
  const auto shares = sobol_shares(sampled(8192, 3, ishigami), 3, 1);
  REQUIRE(shares.size() == 3);
  const double first[] = {0.3139, 0.4424, 0.0}, total[] = {0.5576, 0.4424, 0.2437};
  for (std::size_t i = 0; i < 3; ++i) {
    INFO("input " << i);
    CHECK(shares[i].first == Approx(first[i]).margin(0.01));
    CHECK(shares[i].total == Approx(total[i]).margin(0.01));
    CHECK(std::abs(shares[i].first - first[i]) < 4.0 * shares[i].first_error + 0.003);
  }
}

TEST_CASE("shares of a sum are the shares of its variances") {
  // Independent and uniform: variances go as the squares of the factors, 1 : 4 : 16.
  const auto shares = sobol_shares(
      sampled(2048, 3, [](const std::vector<double>& u) { return u[0] + 2.0 * u[1] + 4.0 * u[2]; }), 3, 1);
  REQUIRE(shares.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(shares[i].first == Approx(std::pow(4.0, static_cast<double>(i)) / 21.0).margin(0.01));
    CHECK(shares[i].total == Approx(shares[i].first).margin(0.01));
  }
}

TEST_CASE("an output that does not vary has no shares, and a sample that failed is left out") {
  CHECK(sobol_shares(std::vector<double>(40, 3.0), 2, 1).empty());
  auto outputs = sampled(512, 2, [](const std::vector<double>& u) { return u[0]; });
  outputs[9] = std::nan("");
  const auto shares = sobol_shares(outputs, 2, 1);
  REQUIRE(shares.size() == 2);
  CHECK(shares[0].first == Approx(1.0).margin(0.02));
  CHECK(shares[1].total == Approx(0.0).margin(0.02));
}

TEST_CASE("quantiles lie between order statistics") {
  CHECK(quantile({3.0, 1.0, 2.0}, 0.5) == 2.0);
  CHECK(quantile({0.0, 10.0}, 0.05) == Approx(0.5));
  CHECK(quantile({7.0}, 0.95) == 7.0);
}

TEST_CASE("a lattice fills the box, and a seed gives another one") {
  const auto points = lattice(256, 4, 1);
  for (std::size_t i = 0; i < 4; ++i) {
    double sum = 0.0;
    for (const auto& point : points) {
      CHECK((point[i] >= 0.0 && point[i] < 1.0));
      sum += point[i];
    }
    // A random sample would miss by 1 / sqrt(12 x 256) = .018 on average; a Sobol sequence by far less.
    CHECK(sum / 256.0 == Approx(0.5).margin(0.005));
  }
  CHECK(lattice(8, 4, 1) == lattice(8, 4, 1));
  CHECK(lattice(8, 4, 1) != lattice(8, 4, 2));
}
