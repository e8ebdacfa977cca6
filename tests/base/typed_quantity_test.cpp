#include <catch2/catch.hpp>

#include "base/typed_quantity.h"

using namespace laywright;

namespace {

// The value inside, or NaN where it is none.
double typed(std::string_view text, Dimension dimension = Dimension::length) {
  const ParsedQuantity parsed = parse_typed(text, dimension);
  INFO(parsed.problem);
  REQUIRE(parsed.quantity);
  return parsed.quantity->value;
}

}  // namespace

// Inches are 25.4 mm exactly; the rest is what the words say.
TEST_CASE("what a person types is understood where it is clear") {
  CHECK(typed("1 1/4 in") == 31.75);
  CHECK(typed("1-1/4\"") == 31.75);
  CHECK(typed("1¼ in") == 31.75);
  CHECK(typed("3/8 in") == 9.525);
  CHECK(typed("3\"") == 76.2);
  CHECK(typed("2.5 inch") == 63.5);
  CHECK(typed("2,5 Inches") == 63.5);
  CHECK(typed("2'") == 609.6);
  CHECK(typed("0,26 mm") == 0.26);
  CHECK(typed("0,260 mm") == 0.26);
  CHECK(typed("-0,1mm") == -0.1);
  CHECK(typed("-1/4 in") == -6.35);
  CHECK(typed("-1 1/4 in") == -31.75);
  CHECK(typed("12 MM") == 12.0);
  CHECK(typed("250 µm") == 0.25);
  CHECK(typed("250 μm") == 0.25);
  CHECK(typed("3 meters") == 3000.0);
  CHECK(typed("1e3 mm") == 1000.0);
  CHECK(typed("0,6 Nm", Dimension::torque) == 600.0);
  CHECK(typed("0.6 N·m", Dimension::torque) == 600.0);
  CHECK(typed("30 percent", Dimension::share) == 0.3);
  CHECK(typed("90 seconds", Dimension::time) == 90.0);
  CHECK(typed("100 r/min", Dimension::rotation_speed) == 100.0);
}

TEST_CASE("a third of an inch is as near as a number can be") { CHECK(typed("1/3 in") == 25.4 / 3.0); }

TEST_CASE("what may mean two things is not guessed") {
  for (const char* text :
       {"1,250 m", "1.250,5 mm", "1,2,3 mm", "1 2 mm", "1/0 in", "1//2 in", "/2 in", "mm", "", "3 furlongs"}) {
    INFO(text);
    CHECK_FALSE(parse_typed(text, Dimension::length).quantity);
  }
  // A unit of something else is named as such.
  CHECK(parse_typed("3 N", Dimension::length).problem.find("force") != std::string::npos);
}

TEST_CASE("a number alone is a number alone") {
  CHECK(as_written(" 0,5 ", std::nullopt) == "0.5");
  CHECK(as_written("1 1/2", std::nullopt) == "1.5");
  CHECK(as_written("1 1/2", Dimension::length) == "1.5");
  CHECK(as_written("held", std::nullopt) == "held");
  CHECK(as_written("1,250", std::nullopt) == "1,250");
}
