#include "measure/layer_width.h"

#include <catch2/catch.hpp>

#include "lay/plans.h"

using namespace laywright;
using namespace laywright::testing;

TEST_CASE("a layer is as wide as from the outer side of its first turn to that of its last") {
  // Ten parallel turns of 1 mm wire, laid from a flange on; by hand.
  PlanDraft draft = mini_spool();
  draft.wind.turns = 10.0;
  Progress progress;
  const Build build = lay(check(draft).value(), {}, progress).value();
  const double first = build.nodes.x(0) - build.half_mm(0);
  const std::size_t last = build.nodes.size() - 1;
  CHECK(layer_width_mm(build, 0) == Approx(build.nodes.x(last) + build.half_mm(last) - first));
  CHECK(layer_width_mm(build, 0) == Approx(10.0).margin(1.0));
}
