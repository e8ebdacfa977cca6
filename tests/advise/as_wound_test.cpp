#include <catch2/catch.hpp>

#include "advise/as_wound.h"
#include "narrow_plan.h"

using namespace laywright;

TEST_CASE("a table of readings with cells that are missing") {
  const Result<AsWound> read = read_as_wound(
      "# a remark\n"
      "layer,layer_turns,counter_turns,counter_length_ft,left_in,middle_mm\r\n"
      "1, 46.5 ,46.5,,5.93,\n"
      "2,,,,,\n"
      ",,70,,,150.9\n"
      "end,,120,200,,\n",
      "a.csv");
  REQUIRE(read.ok());
  const auto& readings = read.value().readings;
  REQUIRE(readings.size() == 3);  // nothing was measured of layer 2
  CHECK(readings[0].layer == 1);
  CHECK(readings[0].layer_turns == 46.5);
  CHECK(*readings[0].diameter_mm[0] == Approx(5.93 * 25.4));
  CHECK_FALSE(readings[0].diameter_mm[1]);
  CHECK(readings[1].counter_turns == 70.0);
  CHECK(readings[2].at_end);
  CHECK(*readings[2].counter_length_mm == Approx(200.0 * 304.8));
}

TEST_CASE("what is wrong with a table is told with its line") {
  const auto first = [](const char* text) {
    const Result<AsWound> read = read_as_wound(text, "a.csv");
    REQUIRE_FALSE(read.ok());
    return read.issues().front();
  };
  CHECK(first("").what.find("no table") != std::string::npos);
  const Issue column = first("layer,layr_turns\n1,5\n");
  CHECK(column.line == 1);
  CHECK(column.what.find("layer_turns") != std::string::npos);
  const Issue number = first("layer,layer_turns\n1,5\n2,many\n");
  CHECK(number.line == 3);
  CHECK(number.value == "many");
  CHECK(first("layer,layer_turns\n1.5,5\n").key == "layer");
  CHECK(first("layer,left_mm\n,150\n").what.find("where") != std::string::npos);
  CHECK(first("counter_turns,left_mm\n50,150\n40,150\n").line == 3);
  CHECK(first("layer,left_mm\n1,2,3\n").line == 2);
  CHECK(first("layer,left_mm\n1,-2\n").line == 2);
}

TEST_CASE("the template, filled in, is read") {
  const Plan plan = laywright::testing::checked(laywright::testing::narrow_draft());
  std::string text = as_wound_template(plan, 2);
  CHECK_FALSE(read_as_wound(text, "a.csv").ok());  // nothing in it yet
  text.replace(text.find("1,,"), 3, "1,46,");
  const Result<AsWound> read = read_as_wound(text, "a.csv");
  REQUIRE(read.ok());
  CHECK(read.value().readings.front().layer_turns == 46.0);
}
