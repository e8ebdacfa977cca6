// What a scatter of the diameter does to the figures that are read.
#include <algorithm>

#include "lay/plans.h"
#include "wound.h"

using namespace laywright;
using testing::wound;

TEST_CASE("the greatest diameter is that of the fiber that stands out farthest, as thick as it is there") {
  const auto [build, measured] = wound(testing::scattered_draft(0.0075));
  double greatest = 0.0;
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    greatest = std::max(greatest, 2.0 * (build.nodes.r(k) + build.half_mm(k)));
  }
  CHECK(measured.outer_diameter.greatest_mm == Approx(greatest).margin(1e-9));
}

// A pitch of 1.16 d leaves 0.16 d between two turns, more where they are thin; the limit is just above.
TEST_CASE("a gap is clear of both turns, as thick as they are") {
  const auto beside_gaps = [](double scatter_mm) {
    PlanDraft draft = testing::scattered_draft(scatter_mm);
    draft.wind.turns = 39.0;
    draft.limits.gap_d = 0.18;
    return wound(draft).measured.layers.at(0).gap_length_mm;
  };
  CHECK(beside_gaps(0.0) == 0.0);
  CHECK(beside_gaps(0.0075) > 0.0);
}
