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
  CHECK(first("layer,layer_turns\n1.5,5\n").key == "column 1 (layer)");
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

TEST_CASE("the same readings in every dialect of a table") {
  const char* const dialects[] = {
      "layer,counter_turns,counter_length_m,left_mm,right_mm,width_mm\n3,46.5,1200,150.25,150.75,11.5\n",
      "\xEF\xBB\xBFLayer;Counter turns;Length (km);LEFT (mm);Right [mm];Width in mm\r\n"
      ";;;;;\r\n\r\n3;46,5;1,2;150,25;150,75;11,5\r\n",
      "LAYER\tTURNS\tLength, m\tLeft diameter (cm)\tRIGHT_MM\tLayer width (mm)\n3\t46,5\t1.200,0\t15,025\t150,75\t"
      "11,5\n",
      "\"layer\",\"turns\",\"length (m)\",\"left (mm)\",\"diameter right (mm)\",\"width (mm)\"\n"
      "\"3\",\"46,5\",\"1 200\",\"150,25\",\"150,75\",\"11,5\"\n",
      "sep=;\nlayer;counter_turns;counter_length_m;left_mm;right_mm;width_mm\n3;46.5;1,200.0;150.25;150.75;11.5\n"};
  for (const char* const text : dialects) {
    INFO(text);
    const Result<AsWound> read = read_as_wound(text, "a.csv");
    REQUIRE(read.ok());
    REQUIRE(read.value().readings.size() == 1);
    const Reading& r = read.value().readings.front();
    CHECK(r.layer == 3);
    CHECK(*r.counter_turns == Approx(46.5));
    CHECK(*r.counter_length_mm == Approx(1'200'000.0));
    CHECK(*r.diameter_mm[0] == Approx(150.25));
    CHECK_FALSE(r.diameter_mm[1]);
    CHECK(*r.diameter_mm[2] == Approx(150.75));
    CHECK(*r.width_mm == Approx(11.5));
  }
}

TEST_CASE("a cell that may be a thousand or a decimal number is told with line and column, not guessed") {
  const Result<AsWound> read = read_as_wound("layer;turns;left (mm)\n1;46;150\n2;1,234;151\n", "a.csv");
  REQUIRE_FALSE(read.ok());
  const Issue& told = read.issues().front();
  CHECK_THAT(to_text(told), Catch::Matchers::Contains("a.csv:3: error: column 2 (turns) = 1,234: "));
  CHECK(told.what.find("1234") != std::string::npos);
  // Where other cells have decimal commas, it can be one thing only.
  const Result<AsWound> clear = read_as_wound("layer;turns;left (mm)\n1;46,5;150\n2;93,125;151\n", "a.csv");
  REQUIRE(clear.ok());
  CHECK(*clear.value().readings[1].counter_turns == Approx(93.125));
}

TEST_CASE("headings that say too little, or what no plan can read, are told") {
  const auto problem = [](const char* heading) {
    const Result<AsWound> read = read_as_wound(std::string("layer,") + heading + "\n1,5\n", "a.csv");
    REQUIRE_FALSE(read.ok());
    CHECK(read.issues().front().line == 1);
    CHECK(read.issues().front().key.find("column 2") == 0);
    return read.issues().front().what;
  };
  using Catch::Matchers::Contains;
  CHECK_THAT(problem("left"), Contains("left (mm)"));
  CHECK_THAT(problem("left (kg)"), Contains("mm, cm, m"));
  CHECK_THAT(problem("Layer"), Contains("twice"));
  CHECK_THAT(problem("counter"), Contains("[machine.counter]"));
  CHECK_THAT(problem("turns (mm)"), Contains("without a unit"));
}

TEST_CASE("what the machine's counter shows is turned into length by its wheel and its error") {
  Counter counter;
  counter.unit = "m";
  counter.wheel_mm = 200.0;
  counter.counts_per_turn = 0.2;
  counter.error = 0.25;
  const Result<AsWound> read = read_as_wound("Counter (m);left (mm)\n1000;150,5\n", "a.csv", &counter);
  REQUIRE(read.ok());
  // A metre for a turn of the wheel of .2 m; it shows a quarter too much.
  CHECK(*read.value().readings.front().counter_length_mm == Approx(800'000.0));
  CHECK_FALSE(read_as_wound("counter (ft),left_mm\n1000,150\n", "a.csv", &counter).ok());
  const Result<AsWound> again = read_as_wound(as_wound_table(read.value().readings), "b.csv", &counter);
  REQUIRE(again.ok());
  CHECK(*again.value().readings.front().counter_length_mm == Approx(800'000.0));
  CHECK(*again.value().readings.front().counter_reading == 1000.0);
}
