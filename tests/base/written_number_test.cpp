#include "base/written_number.h"

#include <catch2/catch.hpp>

using namespace laywright;

TEST_CASE("numbers with a decimal point, a decimal comma, and thousands set apart") {
  const auto value = [](std::string_view text) { return read_written_number(text, DecimalMark::untold).value; };
  CHECK(value("2.5") == 2.5);
  CHECK(value("2,5") == 2.5);
  CHECK(value("-0,125") == -0.125);
  CHECK(value("+1.5e3") == 1500.0);
  CHECK(value("1,5e3") == 1500.0);
  CHECK(value("1.234,5") == 1234.5);
  CHECK(value("1,234.5") == 1234.5);
  CHECK(value("1,234,567") == 1234567.0);
  CHECK(value("1 234,5") == 1234.5);
  CHECK(value("1\xC2\xA0"
              "234") == 1234.0);
  CHECK(value("12'345.5") == 12345.5);
  CHECK(value("1234,567") == 1234.567);  // nobody sets thousands apart so
  CHECK(value("150.434") == 150.434);
  for (const char* const bad : {"", "many", "1,2,3", "1.2.3", "1,23,456.7", "12 34", "1.234.5", "nan", "--1", ","}) {
    INFO(bad);
    CHECK_FALSE(value(bad));
  }
}

TEST_CASE("a mark before three digits counts where the table has it clearly, and is told where it may be either") {
  const auto read = [](std::string_view text, DecimalMark mark) { return read_written_number(text, mark); };
  CHECK(read("1,234", DecimalMark::untold).unclear);
  CHECK(read("1,234", DecimalMark::point).unclear);
  CHECK(read("1,234", DecimalMark::both).unclear);
  CHECK(read("1,234", DecimalMark::comma).value == 1.234);
  CHECK(read("1.234", DecimalMark::comma).unclear);
  CHECK(read("1.234", DecimalMark::point).value == 1.234);
  CHECK(decimal_mark_of({"1,234", "12", "end"}) == DecimalMark::untold);
  CHECK(decimal_mark_of({"1,234", "2,5"}) == DecimalMark::comma);
  CHECK(decimal_mark_of({"1,234,567"}) == DecimalMark::point);
  CHECK(decimal_mark_of({"0,234"}) == DecimalMark::comma);
  CHECK(decimal_mark_of({"2.5", "2,5"}) == DecimalMark::both);
}
