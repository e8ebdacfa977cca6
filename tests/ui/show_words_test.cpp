// Figures that count while a wind is shown.
#include <catch2/catch.hpp>

#include "ui/show_window.h"

using namespace laywright;

TEST_CASE("figures keep their unit while they count") {
  CHECK(counted_length(0.0, 25e6, Units::metric) == "0.00 km");
  CHECK(counted_length(12.346e6, 25e6, Units::metric) == "12.35 km");
  CHECK(counted_length(1234.0, 32'800.0, Units::metric) == "1.2 m");
  CHECK(counted_length(123'400.0, 832'000.0, Units::metric) == "123 m");
  CHECK(counted_length(3.048e6, 25e6, Units::inch) == "10,000 ft");  // a foot is 304.8 mm
  CHECK(counted_turns(0.0) == "0");
  CHECK(counted_turns(999.9) == "999");
  CHECK(counted_turns(45'012.0) == "45,012");
  CHECK(counted_turns(1'234'567.0) == "1,234,567");
  CHECK(counted_time(65.0, 4000.0) == "0 h 01 min");
  CHECK(counted_time(5.0, 600.0) == "0 min 05 s");
  CHECK(counted_time(5.0, 40.0) == "5 s");
}
