#include <limits>

#include <catch2/catch.hpp>

#include "base/round_figure.h"

using namespace laywright;

TEST_CASE("what a sum leaves in the last digits is taken off, and what a person wrote stays") {
  CHECK(without_noise(0.1 + 0.2) == 0.3);
  CHECK(without_noise(0.504 - 0.0025) == 0.5015);
  CHECK(without_noise(-123.456789) == -123.456789);
  CHECK(without_noise(0.0) == 0.0);
  CHECK(without_noise(std::numeric_limits<double>::infinity()) == std::numeric_limits<double>::infinity());
}
