#include <catch2/catch.hpp>

#include "advise/lattice.h"
#include "advise/response.h"
#include "base/random.h"

using namespace laywright;
using Eigen::VectorXd;

TEST_CASE("a curved function with noise: the plane at a place, and the covariance of what scatters") {
  // Two values of two coordinates: 3 + 2 u - v + u^2 and 5 v, both with the same noise of 0.1. Slopes by calculus.
  Random random(1);
  std::vector<VectorXd> points, values;
  for (const auto& unit : lattice(4000, 2, 1)) {
    const double u = 2.0 * unit[0] - 1.0, v = 2.0 * unit[1] - 1.0, noise = 0.1 * random.normal();
    points.push_back(VectorXd{{u, v}});
    values.push_back(VectorXd{{3.0 + 2.0 * u - v + u * u + noise, 5.0 * v + noise}});
  }
  const Response response = response_of(points, values, VectorXd{{0.5, 0.0}});
  CHECK(response.at_centre[0] == Approx(4.25).margin(0.01));
  CHECK(response.slope(0, 0) == Approx(3.0).margin(0.02));  // 2 + 2 u
  CHECK(response.slope(0, 1) == Approx(-1.0).margin(0.02));
  CHECK(response.slope(1, 0) == Approx(0.0).margin(0.02));
  CHECK(response.slope(1, 1) == Approx(5.0).margin(0.02));
  CHECK(response.scatter(0, 0) == Approx(0.01).epsilon(0.1));
  CHECK(response.scatter(0, 1) == Approx(0.01).epsilon(0.1));
  CHECK(response.at(VectorXd{{0.6, 0.1}})[1] == Approx(0.5).margin(0.01));
}
