// Figures and quantities as text. A foot is 304.8 mm, an inch 25.4 mm, a pound .45359237 kg: the agreement of 1959.
#include "base/quantity_text.h"

#include <cmath>
#include <cstddef>

#include <catch2/catch.hpp>

using namespace laywright;

TEST_CASE("a figure has its digits, thousands apart, and no minus before nothing") {
  CHECK(figure(12345.67, 1) == "12,345.7");
  CHECK(figure(-1234567.0, 0) == "-1,234,567");
  CHECK(figure(-0.04, 1) == "0.0");
  CHECK(figure(INFINITY, 1) == "-");
  CHECK(figure(1234567.891, 1) == "1,234,567.9");
  CHECK(figure(-1234.5, 0) == "-1,234");  // half to even, as printf does
  CHECK(figure(999.0, 0) == "999");
  CHECK(figure(std::nan(""), 2) == "-");
  CHECK(setting(0.1 + 0.2) == "0.3");
  CHECK(signed_figure(0.12, 2) == "+0.12");
  CHECK(signed_figure(-3.0, 1) == "-3.0");
  CHECK(figure_with(5.2, 3) == "5.20");
  CHECK(figure_with(12345.6, 3) == "12,346");
  CHECK(short_figure(24.987, 4) == "24.99");
  CHECK(short_figure(0.2450, 4) == "0.245");
  CHECK(short_figure(100.0, 4) == "100");
  CHECK(setting(-0.0) == "0");
}

TEST_CASE("what is counted gets an s, but for one") {
  CHECK(counted(1, "turn") == "1 turn");
  CHECK(counted(0U, "record") == "0 records");
  CHECK(counted(std::size_t{1234}, "layer") == "1,234 layers");
  CHECK(counted("1.5", "turn") == "1.5 turns");
  CHECK(counted(setting(1.0), "turn") == "1 turn");
}

TEST_CASE("an amount in inches has as many digits that count as in millimetres") {
  CHECK(amount_text(Amount::small_length, 203.42, 2, false) == "203.42 mm");
  CHECK(amount_text(Amount::small_length, 203.2, 2, true) == "8.0000 in");
  CHECK(amount_text(Amount::fiber_length, 304.8, 1, true) == "1,000.0 ft");
  CHECK(amount_text(Amount::mass, 0.45359237, 3, true) == "1.000 lb");
  CHECK(size_text(203.2, false) == "203.200 mm");
  CHECK(size_text(203.2, true) == "8.00000 in");
  CHECK(short_size_text(203.4, 2, false) == "203.4 mm");
  CHECK(short_size_text(100.0, 2, false) == "100 mm");
  CHECK(short_size_text(25.4, 2, true) == "1 in");
  CHECK(short_size_text(12.7, 2, true) == "0.5 in");
  CHECK(short_size_text(0.0, 0, false) == "0 mm");
  CHECK(rough_size_text(0.0371, false) == "0.037 mm");
  CHECK(rough_size_text(12.34, false) == "12 mm");
  CHECK(rough_size_text(0.254, true) == "0.0100 in");
}

TEST_CASE("lengths of fiber are those of a counter") {
  CHECK(fiber_length_text(830'120.0, false) == "830.1 m");
  CHECK(fiber_length_text(1.24e6, false) == "1.2400 km");
  CHECK(fiber_length_text(829'056.0, true) == "2,720.0 ft");
  // A whole wind, as window and page tell it, is what the commands tell.
  for (const double mm : {1e6, 3e6, 24.983e6, 1.5e6, 812'400.0, 32'835.0})
    CHECK(fiber_text(mm, 5, false) == length_text(mm));
  CHECK(fiber_text(1e6, 5, false) == "1 km");
  CHECK(fiber_text(829'056.0, 5, true) == "2,720 ft");
  CHECK(fiber_text(20e6, 6, false) == "20 km");
  CHECK(fiber_text(500'000.0, 6, false) == "500 m");
  CHECK(fiber_text(3'048'000.0, 6, true) == "10,000 ft");  // no exponent
  CHECK(fiber_text(24.987e6, 4, false) == "24.99 km");
  CHECK(length_text(25e6) == "25 km");
  CHECK(length_text(1.2442e6) == "1.2442 km");
  CHECK(length_text(812400.0) == "812.4 m");
  CHECK(length_text(0.245) == "0.245 mm");
}

TEST_CASE("times, shares and angles") {
  CHECK(duration_text(42.4) == "42 s");
  CHECK(duration_text(400.0) == "6 min 40 s");
  CHECK(duration_text(59.7) == "1 min 00 s");
  CHECK(duration_text(3900.0) == "1 h 05 min");
  CHECK(percent_text(0.839, 1) == "83.9 %");
  CHECK(degrees_text(359.6, 0) == "360\u00B0");
}
