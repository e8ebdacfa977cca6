// Numbers of large tables, against the formatting library.
#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <sstream>

#include <fmt/format.h>

#include "figures/table_rows.h"

namespace laywright {
namespace {

std::string decimal(double value, int decimals) {
  TableRows rows;
  rows.add_decimal(value, decimals);
  std::ostringstream out;
  rows.write(out);
  return out.str();
}

}  // namespace

TEST_CASE("decimals of a table are those of the formatting library") {
  std::mt19937_64 bits(7);
  for (int i = 0; i < 20000; ++i) {
    // From a thousandth to a million, of both signs.
    const double share = static_cast<double>(bits() >> 11) * 0x1p-53;
    const double value = (bits() % 2 == 0 ? 1.0 : -1.0) * std::pow(10.0, 9.0 * share - 3.0);
    const int decimals = static_cast<int>(bits() % 7);
    const std::string expected = fmt::format("{:.{}f},", value, decimals);
    const std::string got = decimal(value, decimals);
    // No minus before what is rounded to nothing.
    if (got != expected && expected != "-" + got) FAIL(value << ": " << got << " is not " << expected);
  }
}

TEST_CASE("decimals of a table at their ends") {
  CHECK(decimal(0.0, 4) == "0.0000,");
  CHECK(decimal(-0.0, 2) == "0.00,");
  CHECK(decimal(0.999999, 3) == "1.000,");
  CHECK(decimal(12.5, 0) == "13,");
  CHECK(decimal(1e15, 2) == "1000000000000000.00,");
  CHECK(decimal(8.999e12, 6) == "8999000000000.000000,");
}

}  // namespace laywright
