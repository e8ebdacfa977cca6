#include <catch2/catch.hpp>

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

// Width 200: edge zones of 10 mm.
PlanDraft wide_draft() {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = 200.0;
  return wide;
}

// Straight close turns from flange to flange; the height of a turn over its layer is a function of layer and x.
Build level(const Plan& plan, int layers, double last_share, const std::function<double(int, double)>& extra) {
  BuildMaker maker(plan, 24);
  for (int layer = 0; layer < layers; ++layer) {
    const bool right = layer % 2 == 0;
    const double turns = layer + 1 == layers ? std::floor(200.0 * last_share) : 200.0;
    maker.stroke(right ? 1 : -1, turns, [=, &extra](double turn) {
      const double step = std::floor(turn + 1e-9);
      const double x = right ? 0.5 + step : 199.5 - step;
      return Place{x, 50.5 + layer + extra(layer, x)};
    });
  }
  return maker.finish();
}

bool at_left(double x) { return x < 11.0; }

}  // namespace

TEST_CASE("a heap that grows at one flange is a pile-up, from the layer where it passes the limit") {
  const Plan plan = plan_of(wide_draft());
  const Build build = level(plan, 8, 1.0, [](int layer, double x) { return at_left(x) ? 0.3 * (layer + 1) : 0.0; });
  const Measurements m = measured(plan, build);
  const auto piles = of_kind(m, FindingKind::pile_up);
  REQUIRE(piles.size() == 1);
  const Finding& pile = piles.front();
  CHECK(*pile.side == Side::left);
  CHECK(pile.layer == 4);  // .3 * 4 > 1
  CHECK(pile.last_layer == 8);
  CHECK(pile.size_mm == Approx(2.4).margin(0.01));
  CHECK(pile.x_mm[0] == 0.0);
  CHECK(pile.x_mm[1] == Approx(10.0));
  CHECK(pile.angle_deg[1] == 360.0);
  CHECK(says(pile, "left flange"));
  CHECK(says(pile, "from layer 4 on"));
  CHECK(of_kind(m, FindingKind::edge_valley).empty());
  CHECK((m.outer_diameter.left_mm - m.outer_diameter.middle_mm) / 2.0 == Approx(2.4).margin(0.01));
}

TEST_CASE("a sunken edge is an edge valley") {
  const Plan plan = plan_of(wide_draft());
  const Build build =
      level(plan, 8, 1.0, [](int layer, double x) { return at_left(200.0 - x) ? -0.2 * (layer + 1) : 0.0; });
  const Measurements m = measured(plan, build);
  const auto valleys = of_kind(m, FindingKind::edge_valley);
  REQUIRE(valleys.size() == 1);
  CHECK(*valleys.front().side == Side::right);
  CHECK(valleys.front().layer == 6);
  CHECK(valleys.front().size_mm == Approx(1.6).margin(0.01));
  CHECK(of_kind(m, FindingKind::pile_up).empty());
}

TEST_CASE("the place of a heap or a valley is at its own flange, where it is worst") {
  const Plan plan = plan_of(wide_draft());
  for (const int layers : {7, 8}) {  // the last one begins at the left flange, and at the right one
    for (const double step : {0.3, -0.3}) {
      const Build build = level(plan, layers, 1.0, [=](int layer, double x) {
        return !at_left(x) ? 0.0 : step * (layer + 1) * (x > 5.0 && x < 6.0 ? 1.05 : 1.0);
      });
      const Measurements m = measured(plan, build);
      const auto found = of_kind(m, step > 0.0 ? FindingKind::pile_up : FindingKind::edge_valley);
      REQUIRE(found.size() == 1);
      REQUIRE(found.front().places.size() == 1);
      CHECK(build.nodes.x(found.front().places.front().node) == Approx(5.5).margin(1e-6));
    }
  }
}

TEST_CASE("an edge within the limit is no finding") {
  const Plan plan = plan_of(wide_draft());
  const auto slight = [](int, double x) { return at_left(x) ? 0.9 : 0.0; };
  CHECK(measured(plan, level(plan, 8, 1.0, slight)).findings.empty());
  PlanDraft strict = wide_draft();
  strict.limits.pile_up_d = 0.8;
  CHECK(of_kind(measured(plan_of(strict), level(plan, 8, 1.0, slight)), FindingKind::pile_up).size() == 1);
}

TEST_CASE("a last stroke that stopped on the way is neither a heap nor a valley") {
  const Plan plan = plan_of(wide_draft());
  // The layer is more than the limit high, and covers one edge and a part of the middle.
  const auto thick = [](int layer, double) { return 0.3 * layer; };
  for (const double share : {0.1, 0.5, 0.9}) {
    INFO("share " << share);
    CHECK(measured(plan, level(plan, 5, share, thick)).findings.empty());
  }
}

TEST_CASE("a tapered barrel is not an edge that is off level") {
  PlanDraft conical = wide_draft();
  conical.spool.barrel_taper_mm = 8.0;
  const Plan plan = plan_of(conical);
  const Build build = level(plan, 4, 1.0, [](int, double x) { return 4.0 * x / 200.0; });
  CHECK(measured(plan, build).findings.empty());
}
