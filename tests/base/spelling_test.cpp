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

TEST_CASE("round figures below a value") {
  CHECK(round_figure_below(1.0) == 1.0);
  CHECK(round_figure_below(4.99) == 2.0);
  CHECK(round_figure_below(5.0) == 5.0);
  CHECK(round_figure_below(0.03) == Approx(0.02));
  CHECK(round_figure_below(720.0) == Approx(500.0));
}
