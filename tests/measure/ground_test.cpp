// What lies under the surface: the volume that a fill factor is taken of.
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "lay/random_plans.h"
#include "measure/ground.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {

Spool cone_with_open_flanges() {
  Spool spool;
  spool.barrel_diameter_mm = 100.0;
  spool.flange_diameter_mm = 140.0;
  spool.inside_width_mm = 20.0;
  spool.barrel_taper_mm = 4.0;
  spool.flange_taper_rad = std::atan(0.5);
  return spool;
}

}  // namespace

TEST_CASE("the ground is the barrel, and the faces of open flanges beyond it") {
  Spool spool = cone_with_open_flanges();
  const Ground square(spool, 0.0);
  CHECK(square.radius_mm(0.0) == Approx(50.0));
  CHECK(square.radius_mm(10.0) == Approx(51.0));
  CHECK(square.radius_mm(20.0) == Approx(52.0));
  // A face that opens by half a millimetre for each of height.
  CHECK(square.radius_mm(-3.0) == Approx(56.0));
  CHECK(square.radius_mm(23.0) == Approx(58.0));

  spool.flange_taper_rad = 0.0;
  spool.flange_runout_mm = 2.8;  // at the rim, radius 70, a face leans by 1.4 mm: 0.02 mm for each of radius
  CHECK(std::isinf(Ground(spool, 0.0).radius_mm(0.9)));  // the face stands at 1 mm, and leans further in above
  CHECK(Ground(spool, 0.0).radius_mm(1.1) == Approx(50.11));
  const Ground away(spool, std::numbers::pi);
  CHECK(away.radius_mm(-0.9) == Approx(49.91));  // bare to 1 mm beyond the barrel's end
  CHECK(away.radius_mm(-1.2) == Approx(60.0));   // the face: 0.02 r = 1.2
}

TEST_CASE("the volume under a turn, against the integral") {
  const Spool spool = cone_with_open_flanges();
  const double d = 1.0;
  const SurfaceGrid grid = SurfaceGrid::over(spool.inside_width_mm, d, 10.0);
  const Ground ground(spool, 0.0);
  for (const double x : {-3.0, 7.3, 22.5}) {
    CAPTURE(x);
    HeightField field(grid, std::vector<float>(grid.points, 0.0F));
    const double r = 62.0;
    field.lay(CirclePrint(grid, d), x, r - 50.0);
    double expected = 0.0;
    constexpr int steps = 20'000;
    for (int i = 0; i < steps; ++i) {
      const double off = (i + 0.5) / steps * d - 0.5 * d;
      const double top = r + std::sqrt(0.25 * d * d - off * off);
      const double low = ground.radius_mm(x + off);
      expected += (top * top - low * low) * d / steps;
    }
    CHECK(section_moment(ground, field, 50.0) == Approx(expected).epsilon(0.03));
  }
}

TEST_CASE("a lone turn fills pi/4 of pi/8 + 1/2, however much of it lies") {
  // Under a circle on a line lies a rectangle d x d/2, and a half circle on it.
  PlanDraft plain;
  plain.spool.barrel_diameter_mm = 30.0;
  plain.spool.flange_diameter_mm = 60.0;
  plain.spool.inside_width_mm = 40.0;
  plain.fiber.diameter_mm = 3.0;
  plain.fiber.friction = 0.5;
  plain.traverse.pitch_mm = 3.1;
  plain.traverse.left_stop_mm = plain.traverse.right_stop_mm = 10.0;
  const double pi = std::numbers::pi;
  // As a ring: pi/4 d^2 at R + d/2, over the integral of the rest (Pappus).
  const double ring = pi / 4.0 * 9.0 * 16.5;
  double under = 0.0;
  constexpr int steps = 20'000;
  for (int i = 0; i < steps; ++i) {
    const double off = (i + 0.5) / steps * 3.0 - 1.5;
    const double top = 16.5 + std::sqrt(2.25 - off * off);
    under += 0.5 * (top * top - 225.0) * 3.0 / steps;
  }
  for (const double turns : {0.25, 0.5, 0.75}) {
    CAPTURE(turns);
    plain.wind.turns = turns;
    const Plan plan = random_plans::plan_of(plain);
    const Build build = random_plans::laid(plan);
    Progress progress;
    const double fill = measure(plan, build, progress).fill_factor;
    // Each node is a circle, the first and the last too: one more than there are pieces between them.
    const double circles = static_cast<double>(build.nodes.size()) / (turns * build.stations_per_turn);
    CHECK(fill * circles == Approx(ring / under).epsilon(0.02));
  }
}
