#include <cmath>
#include <numbers>

#include "wound.h"

using namespace laywright;
using testing::wound;

// A held wire that crosses a close-laid layer at uniform phase lies (sqrt(0.75) / 2 + asin(1/2)) d = 0.9566 d above it
// on average (computed from the geometry; a cable-packing practice uses 0.95, NEMA reel method page).
TEST_CASE("a held layer on a close-laid one of the other hand rises 0.9566 d") {
  PlanDraft draft;
  const double d = 0.25;
  draft.spool.barrel_diameter_mm = 150.0;
  draft.spool.flange_diameter_mm = 236.0;
  draft.spool.inside_width_mm = 60.0;
  draft.fiber.diameter_mm = d;
  draft.fiber.friction = Fiber::held;
  draft.traverse.pitch_mm = d;
  draft.traverse.left_stop_mm = 0.5 * d;
  draft.traverse.right_stop_mm = 0.5 * d;
  draft.traverse.free_length_mm = 0.0;
  draft.wind.turns = 2.0 * (60.0 / d - 1.0) - 1.0;
  const auto laid = wound(draft);
  REQUIRE(laid.build.strokes.size() == 2);
  // By hand, away from the flanges: mean radius of the second layer over the first's.
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t k = laid.build.strokes[1].first_node; k < laid.build.nodes.size(); ++k) {
    const double x = laid.build.nodes.x(k);
    if (x < 5.0 || x > 55.0) continue;
    sum += laid.build.nodes.r(k);
    ++count;
  }
  const double rise = (sum / static_cast<double>(count) - 75.125) / d;
  const double exact = std::sqrt(0.75) / 2.0 + std::asin(0.5);
  CHECK(exact == Approx(0.9566).epsilon(1e-4));
  CHECK(rise == Approx(exact).epsilon(0.01));
  // And as the layer table measures it.
  REQUIRE(laid.measured.layers.at(1).mean_rise_d);
  CHECK(*laid.measured.layers[1].mean_rise_d == Approx(exact).epsilon(0.01));
  // It crosses two grooves a turn (wire rope drum handbook page, wirerope.net).
  CHECK(laid.measured.layers[1].crossings == Approx(2.0 * laid.measured.layers[1].turns).margin(3.0));
}

// Exactly 124 turns to and fro: the second double stroke begins where the first did. The fiber follows the flank of the
// turn that lies there until its fleet angle is that of the whole climb, sqrt(2 d / R) (derived), or less: from above it
// slips over before. The lay point used to come at the flank from the side, and was led 9, 18 and 21 mm away at one, two
// and four times the stations.
TEST_CASE("a turn laid on an earlier one leaves it, at the same place whatever the mesh") {
  PlanDraft draft;
  const double d = 0.125;
  draft.spool.barrel_diameter_mm = 80.0;
  draft.spool.flange_diameter_mm = 130.0;
  draft.spool.inside_width_mm = 95.0;
  draft.fiber.diameter_mm = d;
  draft.fiber.friction = 0.3;
  draft.traverse.pitch_mm = 1.5;
  draft.traverse.left_stop_mm = 1.0;
  draft.traverse.right_stop_mm = 1.0;
  draft.traverse.free_length_mm = 100.0;
  draft.wind.turns = 126.0;
  std::vector<double> away;
  for (const double fidelity : {1.0, 2.0, 4.0}) {
    const auto laid = wound(draft, fidelity);
    const auto turn_124 = static_cast<std::size_t>(124 * laid.build.stations_per_turn);
    away.push_back(laid.build.nodes.x(turn_124) - 1.0);
  }
  INFO("away from the guide's line: " << away[0] << ", " << away[1] << ", " << away[2] << " mm");
  CHECK(away[0] < 100.0 * std::sqrt(2.0 * d / 40.0));
  CHECK(away[1] == Approx(away[0]).margin(0.3));
  CHECK(away[2] == Approx(away[0]).margin(0.3));
}
