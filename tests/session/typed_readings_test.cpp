// What a person types into the checklist of a wind, in either system of units. An inch is 25.4 mm, a foot 304.8 mm.
#include "session/typed_readings.h"

#include <catch2/catch.hpp>

#include "answers/reading_text.h"
#include "plan/plan_file.h"
#include "session/bench_for_tests.h"

using namespace laywright;

namespace {

TypedRow row_of(int layer, const std::string& length, const std::string& middle, bool inch) {
  TypedRow row;
  row.layer = layer;
  row.cells[0] = std::to_string(20 * layer);
  row.cells[1] = length;
  row.cells[3] = middle;
  row.inch = inch;
  return row;
}

Plan plan() { return plan_from_text(testing::small_plan, "").value(); }

}  // namespace

TEST_CASE("what is typed in inches and feet is read as such") {
  const Result<AsWound> read = read_typed({row_of(1, "25", "4.5", true)}, plan());
  REQUIRE(read.ok());
  REQUIRE(read.value().readings.size() == 1);
  CHECK(*read.value().readings[0].counter_length_mm == Approx(25.0 * 304.8));
  CHECK(*read.value().readings[0].diameter_mm[1] == Approx(4.5 * 25.4));
}

TEST_CASE("readings go into the other units and come back as they were") {
  const TypedReadings metric{row_of(1, "7.62", "114.3", false), row_of(2, "", "116.84", false)};
  const TypedReadings inch = in_units(metric, nullptr, true);
  CHECK(inch[0].inch);
  CHECK(inch[0].cells[0] == "20");
  CHECK(inch[0].cells[1] == "25");
  CHECK(inch[0].cells[3] == "4.5");
  CHECK(inch[1].cells[3] == "4.6");
  const TypedReadings back = in_units(inch, nullptr, false);
  for (std::size_t i = 0; i < metric.size(); ++i) CHECK(back[i].cells == metric[i].cells);
  // A place for a reading takes the units of the others.
  Checkpoint end;
  end.at_end = true;
  CHECK(with_checkpoints(inch, {end}).back().inch);
}

TEST_CASE("what was read is told in either system of units") {
  Observation diameter;
  diameter.measured = 152.4;
  CHECK(reading_text(diameter, 152.4) == "152.400 mm");
  CHECK(reading_text(diameter, 152.4, true) == "6.00000 in");
  Observation length;
  length.measured = 304'800.0;
  CHECK(reading_text(length, 30'480.0, true) == "100.00 ft");
}

TEST_CASE("what cannot be read yet stays as it was typed, in its units") {
  TypedReadings typed{row_of(1, "7.62", "114.3", false), row_of(2, "", "many", false)};
  const TypedReadings same = in_units(typed, nullptr, true);
  for (std::size_t i = 0; i < typed.size(); ++i) {
    CHECK_FALSE(same[i].inch);
    CHECK(same[i].cells == typed[i].cells);
  }
  for (TypedRow& row : typed) row.cells = {};
  CHECK(in_units(typed, nullptr, true)[0].inch);
}
