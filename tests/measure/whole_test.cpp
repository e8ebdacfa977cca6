// Properties of measure() as a whole.
#include <catch2/catch.hpp>

#include "findings_of.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

// An uneven build that is smooth along the fiber: turns wander, heap and sink.
Build uneven(const Plan& plan, int stations) {
  BuildMaker maker(plan, stations);
  for (int layer = 0; layer < 12; ++layer) {
    const bool right = layer % 2 == 0;
    const double phase = 1.7 * layer;
    maker.stroke(right ? 1 : -1, 55, [=](double turn) {
      const double wander = 0.45 * std::sin(2.9 * turn + phase) + 0.2 * std::sin(7.3 * turn);
      const double base = 1.2 + 1.04 * turn + wander;
      const double lift = 0.35 * std::sin(3.7 * turn + 2.0 * phase) + 0.3 * std::sin(11.0 * turn);
      const bool free = std::sin(4.1 * turn + phase) > 0.8;
      return Place{right ? base : 60.0 - base, 50.6 + 0.85 * layer + std::abs(lift),
                   free ? Support::none : Support::turn, std::sin(5.0 * turn) > 0.97};
    });
  }
  return maker.finish(12.0 * 55.0);
}

PlanDraft wider_draft() {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = 60.0;
  return wide;
}

}  // namespace

TEST_CASE("no figure depends on the number of stations") {
  const Plan plan = plan_of(wider_draft());
  const Measurements coarse = measured(plan, uneven(plan, 180));
  const Measurements fine = measured(plan, uneven(plan, 720));
  CHECK(coarse.fill_factor == Approx(fine.fill_factor).epsilon(2e-3));
  CHECK(coarse.outer_diameter.left_mm == Approx(fine.outer_diameter.left_mm).epsilon(5e-4));
  CHECK(coarse.outer_diameter.middle_mm == Approx(fine.outer_diameter.middle_mm).epsilon(5e-4));
  CHECK(coarse.outer_diameter.greatest_mm == Approx(fine.outer_diameter.greatest_mm).epsilon(5e-4));
  REQUIRE(coarse.layers.size() == fine.layers.size());
  double gap_coarse = 0.0, gap_fine = 0.0;
  int crossings_coarse = 0, crossings_fine = 0;
  for (std::size_t i = 0; i < fine.layers.size(); ++i) {
    const LayerRow& a = coarse.layers[i];
    const LayerRow& b = fine.layers[i];
    CHECK(a.length_mm == Approx(b.length_mm).epsilon(1e-3));
    CHECK(a.mean_diameter_mm == Approx(b.mean_diameter_mm).epsilon(1e-4));
    CHECK(a.bridged_share == Approx(b.bridged_share).margin(2e-3));
    if (i > 0) CHECK(*a.mean_rise_d == Approx(*b.mean_rise_d).margin(5e-3));
    gap_coarse += a.gap_length_mm;
    gap_fine += b.gap_length_mm;
    crossings_coarse += a.crossings;
    crossings_fine += b.crossings;
  }
  CHECK(gap_fine > 1000.0);
  CHECK(gap_coarse == Approx(gap_fine).epsilon(0.01));
  CHECK(crossings_coarse == Approx(crossings_fine).epsilon(0.01));
  CHECK(coarse.findings.size() == fine.findings.size());
  for (const FindingKind kind : {FindingKind::gap, FindingKind::ride_up, FindingKind::bridge}) {
    const auto a = of_kind(coarse, kind);
    const auto b = of_kind(fine, kind);
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
      CHECK(a[i].size_mm == Approx(b[i].size_mm).epsilon(0.02));
      CHECK(static_cast<double>(a[i].occurrences) == Approx(b[i].occurrences).epsilon(0.05));
    }
  }
}

TEST_CASE("findings come gravest first, and a mirrored build has mirrored findings") {
  const Plan plan = plan_of(wider_draft());
  const auto heap = [](bool mirrored) {
    return [mirrored](double turn) {
      const double x = 0.5 + std::floor(turn + 1e-9);
      const bool heaped = x < 4.0;
      return Place{mirrored ? 60.0 - x : x, heaped ? 53.0 : 50.5, Support::barrel};
    };
  };
  const auto a = measured(plan, BuildMaker(plan, 60).stroke(1, 60, heap(false)).finish()).findings;
  const auto b = measured(plan, BuildMaker(plan, 60).stroke(-1, 60, heap(true)).finish()).findings;
  REQUIRE(a.size() == 1);
  REQUIRE(b.size() == 1);
  CHECK(a[0].kind == FindingKind::pile_up);
  CHECK(b[0].kind == FindingKind::pile_up);
  CHECK(*a[0].side == Side::left);
  CHECK(*b[0].side == Side::right);
  CHECK(a[0].size_mm == Approx(b[0].size_mm).margin(1e-4));
  CHECK(a[0].x_mm[1] == Approx(60.0 - b[0].x_mm[0]));
}

TEST_CASE("a build of less than a turn, and one of nothing, are measured") {
  const Plan plan = plan_of(draft());
  const Measurements stub = measured(plan, helix(plan, 60, 0.5, 1.0, 0.4));
  REQUIRE(stub.layers.size() == 1);
  CHECK(stub.layers[0].turns == Approx(23.0 / 60.0));
  CHECK(stub.fill_factor > 0.0);
  CHECK(stub.findings.empty());
  const Measurements none = measured(plan, BuildMaker(plan, 60).finish(0.0));
  CHECK(none.layers.empty());
  CHECK(none.findings.empty());
  CHECK(none.fill_factor == 0.0);
  CHECK(none.outer_diameter.greatest_mm == Approx(100.0));
  CHECK(none.rim_clearance_mm == Approx(30.0));
}

TEST_CASE("a cancelled measurement returns without layers") {
  const Plan plan = plan_of(draft());
  Progress progress;
  progress.cancel();
  const Measurements m = measure(plan, nested(plan, 60, 3, 20, 1.0), progress);
  CHECK(m.layers.empty());
  CHECK(m.findings.empty());
}
