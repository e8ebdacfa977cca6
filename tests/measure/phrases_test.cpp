#include <catch2/catch.hpp>

#include "measure/phrases.h"

using namespace laywright;

TEST_CASE("sizes are told with the digits that count") {
  CHECK(in_mm(0.0371) == "0.037 mm");
  CHECK(in_mm(0.2149) == "0.21 mm");
  CHECK(in_mm(0.999) == "1.0 mm");
  CHECK(in_mm(4.26) == "4.3 mm");
  CHECK(in_mm(12.34) == "12 mm");
  CHECK(in_mm_and_d(0.2, 0.25) == "0.20 mm (0.8 of the fiber's diameter)");
  CHECK(in_mm_and_d(0.8, 0.25) == "0.80 mm (3.2 fiber diameters)");
  CHECK(in_mm_and_d(4.3, 0.25) == "4.3 mm (17 fiber diameters)");
}

TEST_CASE("places are told from the nearer flange") {
  CHECK(place_of(12.0, 95.0, 0.25) == "12 mm from the left flange");
  CHECK(place_of(90.0, 95.0, 0.25) == "5.0 mm from the right flange");
  CHECK(place_of(0.13, 95.0, 0.25) == "at the left flange");
  CHECK(place_of(95.1, 95.0, 0.25) == "at the right flange");
}

TEST_CASE("counts, layers, extents") {
  CHECK(count_of(7) == "7");
  CHECK(count_of(1601) == "1,601");
  CHECK(count_of(1000007) == "1,000,007");
  CHECK(along_of(12500.0) == "12.5 m of fiber from the start");
  CHECK(along_of(1234567.0) == "1,235 m of fiber from the start");
  Finding finding;
  finding.layer = finding.last_layer = 3;
  finding.angle_deg = {350.0, 390.0};
  CHECK(layers_of(finding) == "layer 3");
  CHECK(round_of(finding) == "over 40 degrees of the spool");
  finding.last_layer = 20;
  finding.angle_deg = {0.0, 360.0};
  CHECK(layers_of(finding) == "layers 3 to 20");
  CHECK(round_of(finding) == "all round the spool");
}
