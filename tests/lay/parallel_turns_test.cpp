#include <cmath>
#include <numbers>

#include "plans.h"

using namespace laywright;
using testing::laid;
using testing::mini_spool;

// Layer diameters computed from the nesting of circles, d sqrt(3)/2 a layer; widths for parallel turns from memory of
// the Handbook of Coil Winding (Hagedorn, Sell-Le Blanc, Fleischer, Springer 2018).
TEST_CASE("parallel turns nest: 20 turns in each of five layers, each sqrt(3)/2 d above the last") {
  const double published[] = {101.0, 102.7321, 104.4641, 106.1962, 107.9282};
  PlanDraft draft = mini_spool();
  draft.fiber.section = FiberSection::flat;
  const Build build = laid(draft);
  const Build round = laid(mini_spool());
  REQUIRE(build.strokes.size() == 5);
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  for (std::size_t layer = 0; layer < 5; ++layer) {
    const std::size_t first = build.strokes[layer].first_node;
    const std::size_t end = build.end_of(layer);
    CHECK(std::abs(static_cast<double>(end - first) / build.stations_per_turn - 20.0) <
          1.5 / build.stations_per_turn);
    // A station in the middle of the straight part.
    std::size_t turns = 0;
    for (std::size_t k = first; k < end; ++k) {
      if (k % stations != stations * 7 / 16) continue;
      ++turns;
      const double r = build.nodes.r(k);
      CHECK(r == Approx(50.5 + static_cast<double>(layer) * std::sqrt(0.75)).margin(1e-6));
      CHECK(2.0 * r == Approx(published[layer]).margin(5e-5));
      // The crossings pull at a round fiber, which gives way to them by some thousandths of d.
      CHECK(round.nodes.r(k) == Approx(r).margin(0.005));
    }
    CHECK(turns == 20);
  }
}

// Length outside the crossover zone: 20 pi (101 + ... + 107.9282) = 32.8185 m (computed). The crossovers add rise and
// slope, so the laid length lies above, by less than the handbook's 5-10 % of build height would give.
TEST_CASE("the mini spool's length is that of its parallel turns and a little more") {
  const Build build = laid(mini_spool());
  CHECK(build.length_mm > 32818.5);
  CHECK(build.length_mm < 32818.5 * (1.0 + 0.10 * 4.4641 / 50.0));
}
