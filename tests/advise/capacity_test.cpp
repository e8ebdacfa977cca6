#include <cmath>

#include <catch2/catch.hpp>

#include "advise/capacity.h"
#include "narrow_plan.h"

using namespace laywright;
using namespace laywright::testing;

TEST_CASE("the rule of rope reels") {
  // Half-inch rope, traverse 20 in, barrel 18 in, depth 10 in: 5,180 ft with the table's K = .925 (rope reel capacity page
  // of Trans-Pacific Hardware). K holds the rope's oversize: K = .2618 / d^2.
  const WindingSpace space{18.0, 10.0, 20.0};
  const double d_table = std::sqrt(0.2618 / 0.925);
  CHECK(square_length(space, d_table) / 12.0 == Approx(5180.0).epsilon(1e-4));
  CHECK(d_table / 0.5 == Approx(rope_oversize).epsilon(1e-3));
  // At the nominal diameter, square packing, by the formula: pi * 28 * 10 * 20 / .25 in.
  CHECK(square_length(space, 0.5) / 12.0 == Approx(5864.3).epsilon(1e-5));
}

TEST_CASE("a worked exercise of a reel, square and hexagonal") {
  // Core 50 mm, width 60 mm, rope 6 mm, 20 m: outer diameter 133.337 mm (hackmath.net, problem 8298); hexagonal packing
  // by area, sqrt(3)/2 d^2 for each turn: 125.43 mm.
  CHECK(square_length({50.0, (133.337 - 50.0) / 2.0, 60.0}, 6.0) == Approx(20000.0).epsilon(1e-4));
  CHECK(hexagonal_length({50.0, (125.43 - 50.0) / 2.0, 60.0}, 6.0) == Approx(20000.0).epsilon(1e-3));
}

TEST_CASE("parallel turns on a small spool, in whole layers") {
  // Five layers of 20 turns of 1 mm wire, mean diameters 101, 102.7321, ... 107.9282 mm (nesting circles): 32.8185 m,
  // circles; the pitch adds 5e-6.
  CHECK(nested_length({100.0, 1.0 + 4.0 * 0.8660254 + 0.1, 20.5}, 1.0, 1.0) == Approx(32818.5).epsilon(2e-5));
  CHECK(nested_length({100.0, 0.9, 20.5}, 1.0, 1.0) == 0.0);
}

TEST_CASE("the space of a spool with opening flanges and a clearance") {
  PlanDraft draft = narrow_draft();
  draft.spool.flange_taper_rad = 0.1;
  draft.limits.rim_clearance_mm = 3.0;
  const WindingSpace space = winding_space(draft);
  CHECK(space.depth_mm == Approx(40.0));
  // Both faces open by h tan(0.1): on average over the depth, once.
  CHECK(space.width_mm == Approx(12.0 + 40.0 * std::tan(0.1)));
}

TEST_CASE("the model fills a spool to its clearance, between the loosest and the densest packing") {
  PlanDraft draft = narrow_draft();
  draft.spool.flange_diameter_mm = 156.0;
  draft.limits.rim_clearance_mm = 0.5;
  Progress progress;
  const Result<Capacity> found = capacity(checked(draft), {}, progress);
  REQUIRE(found.ok());
  const Capacity& c = found.value();
  CHECK(c.first_touch_mm <= c.on_average_mm);
  CHECK(c.on_average_mm < hexagonal_length(c.space, 0.25));
  // Looser than square packing no ordered wind is.
  CHECK(c.first_touch_mm > 0.8 * square_length(c.space, 0.25));
  // The last length before the clearance is touched: the wind of that length keeps it, a turn more does not.
  // A shorter wind has another number of stations, which moves the highest fiber by a tenth of d.
  constexpr double mesh = 0.1 * 0.25;
  PlanDraft until = draft;
  until.wind.turns = c.first_touch_turns;
  CHECK(wound(until).measurements.rim_clearance_mm >= 0.5 - mesh);
  until.wind.turns = c.first_touch_turns + 1.0;
  CHECK(wound(until).measurements.rim_clearance_mm < 0.5 + mesh);
}
