#include <cmath>

#include <catch2/catch.hpp>

#include "lay/same_everywhere.h"

using namespace laywright;

// Against the mathematical library of this machine.
TEST_CASE("functions of the lay model agree with the library's to the last digits") {
  for (double x = 0.0; x < 100.0; x = 1.1 * x + 1e-4) CHECK(exp_minus(x) == Approx(std::exp(-x)).epsilon(1e-12));
  CHECK(exp_minus(0.0) == 1.0);
  CHECK(exp_minus(1e4) == 0.0);
  for (double x = -1.0; x <= 1.0; x += 1e-3) CHECK(cos_of_small(x) == Approx(std::cos(x)).epsilon(1e-15));
}
