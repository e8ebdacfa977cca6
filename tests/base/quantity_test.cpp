#include "base/quantity.h"

#include <cmath>
#include <limits>
#include <random>

#include <catch2/catch.hpp>

using namespace laywright;

namespace {

using enum Dimension;  // not at file level, where ::time is a function

double read(const std::string& text, Dimension dimension) {
  const ParsedQuantity parsed = parse_quantity(text, dimension);
  INFO(text << ": " << parsed.problem);
  REQUIRE(parsed.quantity.has_value());
  return parsed.quantity->value;
}

std::string problem_of(const std::string& text, Dimension dimension) {
  const ParsedQuantity parsed = parse_quantity(text, dimension);
  CHECK_FALSE(parsed.quantity.has_value());
  return parsed.problem;
}

}  // namespace

TEST_CASE("exact conversion factors") {
  // International yard and pound, standard gravity: the exact factors as in NIST SP 811 (2008), appendix B.8;
  // the same figures come from GNU units 2.22.
  CHECK(read("1 in", length) == 25.4);
  CHECK(read("1 ft", length) == 304.8);
  CHECK(read("1 yd", length) == 914.4);
  CHECK(read("1 mil", length) == 0.0254);
  CHECK(read("1 lb", mass) == 0.45359237);
  CHECK(read("1 lbf", force) == 4.4482216152605);
  CHECK(read("1 kgf", force) == 9.80665);
  CHECK(read("1 gf", force) == 0.00980665);
  CHECK(read("1 lbf*in", torque) == 112.9848290276167);
  CHECK(read("1 ft/min", speed) == 5.08);
  // SI prefixes, minutes and hours.
  CHECK(read("1 mm", length) == 1.0);
  CHECK(read("1 cm", length) == 10.0);
  CHECK(read("1 m", length) == 1e3);
  CHECK(read("25 km", length) == 25e6);
  CHECK(read("245 um", length) == 0.245);
  CHECK(read("1 N", force) == 1.0);
  CHECK(read("45 cN", force) == 0.45);
  CHECK(read("1 mm/s", speed) == 1.0);
  CHECK(read("1 m/s", speed) == 1e3);
  CHECK(read("60 m/min", speed) == 1e3);
  CHECK(read("900 g", mass) == 0.9);
  CHECK(read("2 kg", mass) == 2.0);
  CHECK(read("66 g/km", linear_mass) == 66.0);
  CHECK(read("0.066 kg/km", linear_mass) == 66.0);
  CHECK(read("0.6 N*m", torque) == 600.0);
  CHECK(read("600 mN*m", torque) == 600.0);
  CHECK(read("1e6 Pa", stress) == 1.0);
  CHECK(read("150 MPa", stress) == 150.0);
  CHECK(read("72 GPa", stress) == 72e3);
  CHECK(read("2 s", Dimension::time) == 2.0);
  CHECK(read("1.5 min", Dimension::time) == 90.0);
  CHECK(read("0.5 h", Dimension::time) == 1800.0);
  CHECK(read("2 %", share) == 0.02);
  CHECK(read("300 rpm", rotation_speed) == 300.0);
  CHECK(read("0.5 A", current) == 0.5);
  CHECK(read("2 rad", angle) == 2.0);
}

TEST_CASE("conversion factors that are no finite decimals") {
  // NIST SP 811 (2008), appendix B.8, seven digits: psi 6.894757 E+03 Pa, lb/ft 1.488164 kg/m, degree
  // 1.745329 E-02 rad. All digits: GNU units 2.22.
  CHECK(read("1 psi", stress) == Approx(6.894757e-3).epsilon(1e-7));
  CHECK(read("1 psi", stress) == Approx(0.0068947572931683609).epsilon(1e-15));
  CHECK(read("1 kpsi", stress) == Approx(6.8947572931683609).epsilon(1e-15));
  CHECK(read("1 lb/1000ft", linear_mass) == Approx(1488.1639435695539).epsilon(1e-15));
  CHECK(read("1 m/min", speed) == Approx(16.666666666666668).epsilon(1e-15));
  CHECK(read("180 deg", angle) == std::acos(-1.0));
  CHECK(read("90 deg", angle) == std::acos(-1.0) / 2);
}

TEST_CASE("what is equal in two units has the same bits") {
  // 1 in = 25.4 mm exactly: products formed by hand.
  CHECK(read("6 in", length) == read("152.4 mm", length));
  CHECK(read("0.01 in", length) == read("0.254 mm", length));
  CHECK(read("0.1 in", length) == read("2.54 mm", length));
  CHECK(read("3.7 in", length) == read("93.98 mm", length));
  CHECK(read("10 mil", length) == read("0.01 in", length));
  CHECK(read("9.649 mil", length) == read("0.2450846 mm", length));
  CHECK(read("82021 ft", length) == read("25.0000008 km", length));
  CHECK(read("0.7 kgf", force) == read("6.864655 N", force));
  CHECK(read("1000 psi", stress) == read("1 kpsi", stress));
}

TEST_CASE("how a quantity may be written") {
  for (const char* text :
       {"150 mm", "150mm", " 150 \t mm ", "+150 mm", "150.0 mm", "1.5e2 mm", "1.5E+2 mm", "15e1mm", "150. mm"}) {
    CHECK(read(text, length) == 150.0);
  }
  CHECK(read(".5 mm", length) == 0.5);
  CHECK(read("-0.5 mm", length) == -0.5);
  CHECK(read("0e99999999999 mm", length) == 0.0);
}

TEST_CASE("what is wrong with a quantity is said in one sentence") {
  CHECK(problem_of("150", length) == "has no unit; add mm, cm, m, km, um, in, ft, yd or mil");
  CHECK(problem_of("1.5 inch", length) == "has an unknown unit; use mm, cm, m, km, um, in, ft, yd or mil");
  CHECK(problem_of("150 N", length) ==
        "is a force, but a length is needed; use mm, cm, m, km, um, in, ft, yd or mil");
  CHECK(problem_of("5 deg", mass) == "is an angle, but a mass is needed; use kg, g or lb");
  CHECK(problem_of("0,5 mm", length).find("decimal point") != std::string::npos);
  CHECK(problem_of("", length).find("is empty") == 0);
  CHECK(problem_of("   ", length).find("is empty") == 0);
  for (const char* text : {"mm", "nan mm", "NaN mm", "inf mm", "-inf mm", "0x10 mm", "1 2 mm", "--1 mm", "1..2 mm",
                           ". mm", "- mm", "150 mm x", "150 mm;", "1e mm", "1e+ mm", "150 MM", "150 \xc2\xb5m"}) {
    INFO(text);
    CHECK_FALSE(problem_of(text, length).empty());
  }
  for (const char* text : {"1e400 mm", "-1e400 mm", "1e-400 mm", "1e99999999999999999999 mm", "2e303 km"}) {
    INFO(text);
    CHECK(problem_of(text, length) == "is too large or too small a number to compute with");
  }
  CHECK_FALSE(problem_of(std::string("1 mm\0", 5), length).empty());
  CHECK(problem_of(std::string(1000000, '9') + " mm", length).find("longer than") != std::string::npos);
}

TEST_CASE("every unit is known by its name and by its dimension") {
  for (const Dimension dimension : {length, force, speed, mass, linear_mass, torque, stress, angle, Dimension::time,
                                    share, rotation_speed, current}) {
    const std::vector<const Unit*> units = units_of(dimension);
    REQUIRE_FALSE(units.empty());
    for (const Unit* unit : units) CHECK(find_unit(unit->name) == unit);
    CHECK_FALSE(name_of(dimension).empty());
  }
  CHECK(find_unit("furlong") == nullptr);
}

TEST_CASE("a value is written with the fewest digits that read back as it") {
  CHECK(format_quantity(0.245, *find_unit("mm")) == "0.245 mm");
  CHECK(format_quantity(0.245, *find_unit("um")) == "245 um");
  CHECK(format_quantity(152.4, *find_unit("in")) == "6 in");
  CHECK(format_quantity(25e6, *find_unit("km")) == "25 km");
  CHECK(format_quantity(read("45 deg", angle), *find_unit("deg")) == "45 deg");
  CHECK(format_quantity(read("60 m/min", speed), *find_unit("m/min")) == "60 m/min");
  CHECK(format_quantity(0.0, *find_unit("mm")) == "0 mm");
  CHECK(format_quantity(-2.5, *find_unit("mm")) == "-2.5 mm");
  CHECK(format_quantity(1e-12, *find_unit("mm")) == "1e-12 mm");
  CHECK(format_quantity(1.25e20, *find_unit("mm")) == "1.25e20 mm");
  CHECK(format_quantity(100.0, *find_unit("in"), 4) == "3.937 in");
  CHECK(format_quantity(99.9999, *find_unit("mm"), 3) == "100 mm");
}

TEST_CASE("every double survives being written and read, in every unit") {
  std::mt19937_64 random(7);
  const auto check_all = [](double value, const Unit& unit) {
    const std::string text = format_quantity(value, unit);
    const ParsedQuantity parsed = parse_quantity(text, unit.dimension);
    INFO(text);
    REQUIRE(parsed.quantity.has_value());
    REQUIRE(parsed.quantity->value == value);
  };
  for (const Dimension dimension :
       {length, force, speed, mass, linear_mass, torque, stress, angle, Dimension::time, share}) {
    for (const Unit* unit : units_of(dimension)) {
      for (int i = 0; i < 500; ++i) {
        const double fraction = static_cast<double>(random() >> 11U) * 0x1p-53 + 0x1p-53;
        check_all(fraction * std::pow(10.0, static_cast<double>(random() % 24) - 12.0), *unit);
        check_all(std::round(fraction * 1e4) / 100.0, *unit);
      }
      check_all(std::numeric_limits<double>::min() * 1e10, *unit);
      check_all(std::numeric_limits<double>::max() / 1e10, *unit);
    }
  }
}
