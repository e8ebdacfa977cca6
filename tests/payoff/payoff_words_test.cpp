// What is said of how hard fiber is drawn off.
#include <catch2/catch.hpp>

#include "payoff/payoff_words.h"

using namespace laywright;
using Catch::Matchers::Contains;

TEST_CASE("a pull that no fiber bears is told as over a thousand times, not to its last digit") {
  CHECK(multiple_figure(1.006) == "1.01");
  CHECK(multiple_figure(1000.0) == "1,000.00");
  CHECK(multiple_figure(1395782.98) == "over 1,000");

  PayoffRun run;
  run.greatest = 1395782.98;
  run.limit = 1.5;
  run.catch_count = 1;
  run.caught_mm = 810.0;
  CHECK_THAT(payoff_line(run, 1e5),
             Contains("the hardest needs over 1,000 times the pull of winding, the limit is 1.5"));
}
