// The circles of a cut are as thick as the fiber is where it passes.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "lay/plans.h"
#include "paper/section_cut.h"

using namespace laywright;

TEST_CASE("a cut shows each turn as thick as it is") {
  const PlanDraft draft = testing::scattered_draft(0.0075);
  const SectionCut cut = cut_section(testing::sound(draft), testing::laid(draft), 90.0);
  REQUIRE(cut.turns.size() > 100);
  double thinnest = 1.0, thickest = 0.0, least_gap = 1.0;
  for (std::size_t i = 0; i < cut.turns.size(); ++i) {
    const SectionCut::Turn& turn = cut.turns[i];
    thinnest = std::min(thinnest, turn.half_mm);
    thickest = std::max(thickest, turn.half_mm);
    for (std::size_t j = 0; j < i; ++j) {
      const SectionCut::Turn& other = cut.turns[j];
      const double apart = std::hypot(turn.x_mm - other.x_mm, turn.r_mm - other.r_mm);
      least_gap = std::min(least_gap, apart - turn.half_mm - other.half_mm);
    }
  }
  CHECK(thickest > 1.04 * thinnest);
  CHECK(least_gap == Approx(0.0).margin(1e-6 * 0.25));
}
