#include "desk/field_steps.h"

#include <catch2/catch.hpp>

using namespace laywright;

namespace {

// From memory of no standard: what a person at the winder would try next.
FieldRow row_of(const std::string& path, const char* unit) {
  for (const auto& field : plan_fields()) {
    if (field.path() != path) continue;
    FieldRow row{};
    row.path = path;
    row.info = &field;
    row.unit = unit == nullptr ? nullptr : find_unit(unit);
    return row;
  }
  FAIL("no field " << path);
  return {};
}

std::string after(const char* path, const char* unit, const std::string& text, double steps,
                  double fiber_mm = 0.245) {
  return stepped(row_of(path, unit), text, steps, fiber_mm).value_or("none");
}

}  // namespace

TEST_CASE("a step is of a sensible size in the field's own unit") {
  CHECK(after("traverse.pitch", "mm", "0.26", 1.0) == "0.265");
  CHECK(after("traverse.pitch", "mm", "0.26", -1.0) == "0.255");
  CHECK(after("traverse.pitch", "mm", "3.1", 1.0, 3.0) == "3.15");  // a thicker fiber, a coarser step
  CHECK(after("traverse.pitch", "in", "0.0102", 1.0) == "0.0104");
  CHECK(after("spool.barrel_diameter", "mm", "150", 1.0) == "151");
  CHECK(after("spool.barrel_diameter", "cm", "15", 1.0) == "15.1");
  CHECK(after("spool.barrel_diameter", "in", "5.906", -1.0) == "5.856");
  CHECK(after("spool.flange_taper", "deg", "0", 1.0) == "0.5");
  CHECK(after("traverse.pitch_scatter", "%", "0", 1.0) == "0.1");
  CHECK(after("fiber.friction", nullptr, "0.5", 1.0) == "0.55");
  CHECK(after("wind.tension", "N", "0.5", 1.0) == "0.51");
  CHECK(after("wind.length", "km", "25", 1.0) == "26");
  CHECK(after("wind.length", "m", "800", -1.0) == "790");
}

TEST_CASE("ten steps and a tenth of one") {
  CHECK(after("traverse.pitch", "mm", "0.26", 10.0) == "0.31");
  CHECK(after("traverse.pitch", "mm", "0.26", 0.1) == "0.2605");
  CHECK(after("spool.barrel_diameter", "mm", "150", -10.0) == "140");
}

TEST_CASE("steps keep the digits that were there, and add up without a rest") {
  CHECK(after("traverse.pitch", "mm", "0.263", 1.0) == "0.268");
  std::string text = "0.1";
  for (int i = 0; i < 100; ++i) text = after("traverse.pitch", "mm", text, 1.0);
  CHECK(text == "0.6");
  for (int i = 0; i < 100; ++i) text = after("traverse.pitch", "mm", text, -1.0);
  CHECK(text == "0.1");
}

TEST_CASE("up and down about a power of ten are the same step") {
  CHECK(after("wind.length", "m", "100", -1.0) == "99");
  CHECK(after("wind.length", "m", "99", 1.0) == "100");
  CHECK(after("wind.length", "m", "100", 1.0) == "110");
}

TEST_CASE("a step goes by the unit that was typed, and keeps it") {
  CHECK(after("spool.barrel_diameter", "mm", "15 cm", 1.0) == "15.1 cm");
  CHECK(after("spool.barrel_diameter", "mm", "6in", 1.0) == "6.05 in");
}

TEST_CASE("no step leaves the field's range, and there is none from what is no number") {
  CHECK(after("traverse.pitch", "mm", "0.005", -1.0) == "none");  // a pitch of 0 is none
  CHECK(after("traverse.guide_play", "mm", "0", -1.0) == "none");
  CHECK(after("traverse.left_stop", "mm", "0", -1.0) == "-0.02");  // beyond the face is allowed
  CHECK(after("spool.barrel_diameter", "mm", "10000", 1.0) == "none");
  CHECK(after("spool.barrel_diameter", "mm", "", 1.0) == "none");
  CHECK(after("spool.barrel_diameter", "mm", "wide", 1.0) == "none");
  CHECK(after("fiber.friction", nullptr, "held", 1.0) == "none");
}

TEST_CASE("half a unit does not stand for itself") {
  const FieldRow width = row_of("spool.inside_width", "mm");
  CHECK(stands_for_itself(width, "900"));
  CHECK(stands_for_itself(width, "900 mm"));
  CHECK(stands_for_itself(width, "35.5in"));
  CHECK_FALSE(stands_for_itself(width, "900 m"));  // may become mm or mil
  CHECK_FALSE(stands_for_itself(width, "900 c"));
  CHECK_FALSE(stands_for_itself(width, "9."));
  CHECK_FALSE(stands_for_itself(width, ""));
  CHECK_FALSE(stands_for_itself(width, "0"));  // out of range: may become 0.5
  CHECK_FALSE(stands_for_itself(width, "-"));
  CHECK(stands_for_itself(row_of("fiber.linear_mass", "g/km"), "66 g/km"));
  CHECK_FALSE(stands_for_itself(row_of("fiber.friction", nullptr), "hel"));
}
