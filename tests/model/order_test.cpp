// How long close layers keep their order. A turn crosses two grooves of the layer below (wirerope.net, 'drums, multiple layers');
// more crossings are order lost. That each layer should have a whole number of turns, or half a turn more, is known of
// orthocyclic winding (mycoil.info): then a double stroke has a whole number of them.
#include <numbers>

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

// Discs dropped at random on a flat base, each rolling to where it rests, fill .818 of the plane (ballistic deposition with
// restructuring, from memory; tried in tests/referee/random_drop.cpp): a layer of one turn to each pitch p then rises by
// (pi / 4) d / (.818 p / d). A guided wind is laid no looser than that, and a layer that rises by more than its diameter stands on
// holes. Turns that lie in grooves rise by sqrt(3) / 2 d (geometry), or less where their pitch is more than d.
TEST_CASE("layers of a level wind are no looser than discs dropped at random, up to the 120th") {
  PlanDraft draft = sample("long").draft();
  // Off the sample's own settings, by less than can be set: no lucky wind.
  draft.traverse.pitch_mm = 0.2599;
  draft.traverse.left_stop_mm = 0.1075;
  const Measurements measured = wound(draft).measured;
  REQUIRE(measured.layers.size() >= 120);
  const double d = draft.fiber.diameter_mm;
  const double dropped = std::numbers::pi / 4.0 / (0.818 * draft.traverse.pitch_mm / d);
  double sum = 0.0;
  for (std::size_t layer = 2; layer <= 120; ++layer) {
    const double rise = measured.layers[layer - 1].mean_rise_d.value();
    INFO("layer " << layer << " rises by " << rise << " d");
    CHECK(rise > 0.8);
    CHECK(rise < 1.0);
    if (layer > 60) sum += rise / 60.0;
  }
  INFO("layers 61 to 120 rise by " << sum << " d; discs dropped at random by " << dropped);
  CHECK(sum < dropped);
}
