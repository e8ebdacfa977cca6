// Ridge and valley of edges that are built to a height: turns square on each other, so that the surface over layer n of
// 1 mm fiber lies at a radius of 50 + n, and a place that is lifted by h stands h over it.
#include <catch2/catch.hpp>

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

constexpr double width = 200.0;  // edge zones of 10 mm, levels beside them to 40 mm

Plan wide_plan(double barrel_taper_mm = 0.0) {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = width;
  wide.spool.barrel_taper_mm = barrel_taper_mm;
  return plan_of(wide);
}

struct At {
  int layer = 0;  // 0 = the first
  double x = 0.0, turn = 0.0;
};

// Layers of `turns` turns each, the last of `last`.
Build built(const Plan& plan, int layers, double last, const std::function<double(const At&)>& lift) {
  BuildMaker maker(plan, 24);
  for (int layer = 0; layer < layers; ++layer) {
    const bool right = layer % 2 == 0;
    maker.stroke(right ? 1 : -1, layer + 1 == layers ? last : width, [=, &lift](double turn) {
      const double step = std::floor(turn + 1e-9);
      const double x = right ? 0.5 + step : width - 0.5 - step;
      return Place{x, 50.5 + layer + lift({layer, x, turn})};
    });
  }
  return maker.finish();
}

Build built(const Plan& plan, const std::function<double(const At&)>& lift) { return built(plan, 5, width, lift); }

}  // namespace

TEST_CASE("a ridge of known height is told to be so high, however narrow") {
  const Plan plan = wide_plan();
  const Measurements m = measured(plan, built(plan, [](const At& at) { return at.x < 2.0 ? 2.4 : 0.0; }));
  REQUIRE(m.edges);
  CHECK((*m.edges)[0].ridge_mm == Approx(2.4).margin(0.01));
  CHECK((*m.edges)[0].valley_mm == Approx(0.0).margin(0.01));
  CHECK((*m.edges)[1].ridge_mm == Approx(0.0).margin(0.01));
  CHECK((*m.edges)[1].valley_mm == Approx(0.0).margin(0.01));
  const auto piles = of_kind(m, FindingKind::pile_up);
  REQUIRE(piles.size() == 1);
  CHECK(*piles.front().side == Side::left);
  // One figure, wherever it is told.
  CHECK(piles.front().size_mm == (*m.edges)[0].ridge_mm);
  CHECK(m.layers.back().edges->front().ridge_mm == (*m.edges)[0].ridge_mm);
}

TEST_CASE("a valley of known depth is told to be so deep") {
  const Plan plan = wide_plan();
  // A crest is the highest within a diameter: a hole of five turns shows its floor, one of a turn's width does not.
  const Measurements m = measured(plan, built(plan, [](const At& at) { return at.x > 195.0 ? -1.7 : 0.0; }));
  CHECK((*m.edges)[1].valley_mm == Approx(1.7).margin(0.01));
  CHECK((*m.edges)[1].ridge_mm == Approx(0.0).margin(0.01));
  REQUIRE(of_kind(m, FindingKind::edge_valley).size() == 1);
  CHECK(of_kind(m, FindingKind::edge_valley).front().size_mm == (*m.edges)[1].valley_mm);
  const auto slit = [](const At& at) { return at.x > 197.0 && at.x < 198.0 ? -1.7 : 0.0; };
  CHECK((*measured(plan, built(plan, slit)).edges)[1].valley_mm == Approx(0.0).margin(0.01));
}

TEST_CASE("a ridge is what stands there over the whole turn, on average") {
  const Plan plan = wide_plan();
  // Over a quarter of the turn.
  const auto lift = [](const At& at) {
    return at.x < 2.0 && at.turn - std::floor(at.turn + 1e-9) < 0.249 ? 2.4 : 0.0;
  };
  const Measurements m = measured(plan, built(plan, lift));
  CHECK((*m.edges)[0].ridge_mm == Approx(0.6).margin(0.01));
  CHECK(of_kind(m, FindingKind::pile_up).empty());
}

TEST_CASE("an edge is held against the level beside it, not against the middle") {
  const Plan plan = wide_plan();
  const auto crowned = [](const At& at) { return std::abs(at.x - 100.0) < 55.0 ? 3.0 : 0.0; };
  const Measurements m = measured(plan, built(plan, crowned));
  CHECK((*m.edges)[0].valley_mm == Approx(0.0).margin(0.01));
  CHECK((*m.edges)[1].valley_mm == Approx(0.0).margin(0.01));
  CHECK(of_kind(m, FindingKind::pile_up).empty());
  CHECK(of_kind(m, FindingKind::edge_valley).empty());
}

TEST_CASE("a barrel's taper is neither ridge nor valley") {
  const Plan plan = wide_plan(40.0);  // 20 mm of radius over the width: 1 mm within an edge zone
  const Measurements m = measured(plan, built(plan, [](const At& at) { return 20.0 * at.x / width; }));
  for (const EdgeShape& edge : *m.edges) {
    // Turns half a diameter from where they are felt lie .05 mm off the slope; a crest feels the higher neighbour.
    CHECK(edge.ridge_mm < 0.15);
    CHECK(edge.valley_mm < 0.15);
  }
}

TEST_CASE("a heap inside the wind that later layers bury is none of the finished wind") {
  const Plan plan = wide_plan();
  const auto once = [](const At& at) { return at.layer < 3 && at.x < 3.0 ? 1.5 : 0.0; };
  const Measurements m = measured(plan, built(plan, 6, width, once));
  CHECK(m.layers[2].edges->front().ridge_mm == Approx(1.5).margin(0.01));
  CHECK((*m.edges)[0].ridge_mm == Approx(0.0).margin(0.01));
  CHECK(of_kind(m, FindingKind::pile_up).empty());
}

TEST_CASE("an unfinished layer changes neither diameters nor edges, and is named") {
  const Plan plan = wide_plan();
  const auto lift = [](const At& at) { return at.x < 3.0 || at.x > 197.0 ? 0.4 * (at.layer + 1) : 0.0; };
  const Measurements whole = measured(plan, built(plan, 4, width, lift));
  CHECK_FALSE(whole.unfinished_layer);
  // Layer 5 goes to the right: it ends 60.5 mm, or 150.5 mm, from the left flange.
  for (const double turns : {60.0, 150.0}) {
    const Measurements m = measured(plan, built(plan, 5, turns, lift));
    CHECK(m.outer_diameter.left_mm == whole.outer_diameter.left_mm);
    CHECK(m.outer_diameter.middle_mm == whole.outer_diameter.middle_mm);
    CHECK(m.outer_diameter.right_mm == whole.outer_diameter.right_mm);
    CHECK((*m.edges)[0].ridge_mm == (*whole.edges)[0].ridge_mm);
    CHECK((*m.edges)[1].ridge_mm == (*whole.edges)[1].ridge_mm);
    CHECK_FALSE(m.layers.back().edges);
    const auto piles = of_kind(m, FindingKind::pile_up);
    REQUIRE(piles.size() == 2);
    CHECK(piles.front().last_layer == 4);
    REQUIRE(m.unfinished_layer);
    CHECK(m.unfinished_layer->layer == 5);
    CHECK(m.unfinished_layer->turns == Approx(turns).margin(0.05));  // the last node ends it
    CHECK(m.unfinished_layer->end_x_mm == Approx(turns - 0.5).margin(1e-6));
    // With it, the left edge is a layer higher: .4 mm more of ridge over 3 of 10 mm, felt to 4 mm.
    CHECK(m.unfinished_layer->outer_diameter_mm[0] - m.outer_diameter.left_mm == Approx(2.0 * 1.16).margin(0.03));
    CHECK(m.unfinished_layer->outer_diameter_mm[2] == m.outer_diameter.right_mm);
    // What must have room counts it: 50 + 5 layers + the fifth's lift of 2 mm.
    CHECK(m.outer_diameter.greatest_mm == Approx(2.0 * 57.0).margin(1e-4));
    CHECK(m.rim_clearance_mm == Approx(80.0 - 57.0).margin(1e-4));
    CHECK(m.outer_diameter.greatest_at->x_mm < 3.0);
  }
}

TEST_CASE("a wind that ends within its first layer is measured as it lies, without edges") {
  const Plan plan = wide_plan();
  const Measurements m = measured(plan, built(plan, 1, 30.0, [](const At&) { return 0.0; }));
  CHECK(m.outer_diameter.left_mm == Approx(102.0).margin(0.01));
  CHECK(m.outer_diameter.right_mm == Approx(100.0).margin(1e-4));
  CHECK_FALSE(m.edges);
  REQUIRE(m.unfinished_layer);
  CHECK(m.unfinished_layer->layer == 1);
  CHECK(m.unfinished_layer->outer_diameter_mm[0] == m.outer_diameter.left_mm);
}
