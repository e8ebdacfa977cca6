// How long close layers keep their order. A turn crosses two grooves of the layer below (wirerope.net, 'drums, multiple layers');
// more crossings are order lost. That each layer should have a whole number of turns, or half a turn more, is known of
// orthocyclic winding (mycoil.info): then a double stroke has a whole number of them.
#include "bench/order_figures.h"
#include "wound.h"

using namespace laywright;
using testing::sample;
using testing::wound;

namespace {

// Of layers 21 to 25 of the sample long, with so many turns of the spool in a double stroke.
double crossings_with(double turns_in_double_stroke) {
  PlanDraft draft = bench::with_turns(sample("long").draft(), turns_in_double_stroke);
  draft.wind.length_mm = 5e6;
  const Measurements measured = wound(draft).measured;
  REQUIRE(measured.layers.size() >= 25);
  return bench::crossings_in_turn(measured, 20, 25);
}

}  // namespace

TEST_CASE("order lasts longer where a double stroke has a whole number of turns") {
  for (const double whole : {727.0, 731.0}) {
    const double kept = crossings_with(whole);
    const double lost = crossings_with(whole + 0.5);
    INFO(whole << " turns: " << kept << " crossings in a turn; half a turn more: " << lost);
    CHECK(kept == Approx(2.0).margin(0.03));
    CHECK(lost > kept + 0.1);
  }
}
