#include <cmath>

#include <catch2/catch.hpp>

#include "base/round_figure.h"
#include "base/spelling.h"

using namespace laywright;

TEST_CASE("a sentence begins with a capital letter, what has none stays") {
  CHECK(capitalised("gap at a flange") == "Gap at a flange");
  CHECK(capitalised("Gap") == "Gap");
  CHECK(capitalised("0.5 mm") == "0.5 mm");
  CHECK(capitalised("\u00E9tat") == "\u00E9tat");
  CHECK(capitalised("").empty());
}

TEST_CASE("an ending is read in letters of any size") {
  CHECK(ending_of("a/Sheet.PDF") == ".pdf");
  CHECK(ending_of("plan.lay.Toml") == ".toml");
  CHECK(ending_of("a.b/none").empty());
}

TEST_CASE("round figures below and above a value, and the decimals that they need") {
  CHECK(round_figure_below(1.0) == 1.0);
  CHECK(round_figure_below(4.99) == 2.0);
  CHECK(round_figure_below(5.0) == 5.0);
  CHECK(round_figure_below(0.03) == Approx(0.02));
  CHECK(round_figure_below(720.0) == Approx(500.0));
  CHECK(round_figure_below(0.0011) == Approx(0.001));
  CHECK(round_figure_above(1.0) == 1.0);
  CHECK(round_figure_above(1.01) == 2.0);
  CHECK(round_figure_above(0.021) == Approx(0.05));
  CHECK(round_figure_above(0.05) == Approx(0.05));
  CHECK(round_figure_above(501.0) == Approx(1000.0));
  // 0.3 / 3 and the like are above or below by their last bit.
  for (int power = -9; power <= 9; ++power) {
    const double ten = std::pow(10.0, power);
    for (const double factor : {1.0, 2.0, 5.0}) {
      CHECK(round_figure_below(factor * ten * (1.0 - 1e-14)) == Approx(factor * ten));
      CHECK(round_figure_above(factor * ten * (1.0 + 1e-14)) == Approx(factor * ten));
    }
  }
  CHECK(decimals_of_step(20.0) == 0);
  CHECK(decimals_of_step(0.5) == 1);
  CHECK(decimals_of_step(0.02) == 2);
  CHECK(decimals_of_step(0.1) == 1);
  CHECK(decimals_for(123.4, 3) == 0);
  CHECK(decimals_for(1.0, 3) == 2);
  CHECK(decimals_for(0.0123, 3) == 4);
}
