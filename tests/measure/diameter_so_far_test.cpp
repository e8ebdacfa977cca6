// How thick a wind is while it grows. The rows are set by hand.
#include "measure/diameter_so_far.h"

#include <catch2/catch.hpp>

using namespace laywright;

namespace {

LayerRow layer(double length_mm, double middle_mm) {
  LayerRow row;
  row.length_mm = length_mm;
  row.outer_diameter_mm = {0.0, middle_mm, 0.0};
  return row;
}

}  // namespace

TEST_CASE("the diameter so far grows with each layer's share, from the barrel to the last layer") {
  Measurements m;
  m.layers = {layer(1000.0, 102.0), layer(2000.0, 104.0)};
  CHECK(diameter_so_far(m, 100.0, 0.0) == 100.0);
  CHECK(diameter_so_far(m, 100.0, 500.0) == Approx(101.0));
  CHECK(diameter_so_far(m, 100.0, 1000.0) == Approx(102.0));
  CHECK(diameter_so_far(m, 100.0, 1500.0) == Approx(102.5));
  CHECK(diameter_so_far(m, 100.0, 3000.0) == Approx(104.0));
  CHECK(diameter_so_far(m, 100.0, 9000.0) == Approx(104.0));
  CHECK(diameter_so_far(m, 100.0, -1.0) == 100.0);
}

TEST_CASE("a last layer that leaves the middle bare does not make the wind thinner") {
  Measurements m;
  m.layers = {layer(1000.0, 102.0), layer(100.0, 101.5)};
  CHECK(diameter_so_far(m, 100.0, 1100.0) == Approx(102.0));
  CHECK(diameter_so_far({}, 100.0, 10.0) == 100.0);
}
