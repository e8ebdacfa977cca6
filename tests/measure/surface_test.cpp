#include <catch2/catch.hpp>

#include <algorithm>

#include "measure/measurements.h"
#include "measure/surface.h"
#include "synthetic_build.h"

using namespace laywright;
using namespace laywright::synthetic;

namespace {}  // namespace

// Closed form: OD = 100 + 2 (1 + 4 sqrt(.75)) = 108.9282.
TEST_CASE("outer diameter of a nested build is that of its crests") {
  const Plan plan = plan_of(draft());
  const Measurements m = measured(plan, nested(plan, 90, 5, 20, 1.0));
  CHECK(m.outer_diameter.greatest_mm == Approx(108.9282).margin(1e-4));
  // Points may miss a crest by a sixteenth of d: 2 (1/2 - sqrt(1/4 - 1/256)) = .008.
  CHECK(m.outer_diameter.middle_mm == Approx(108.9282).margin(0.009));
  CHECK(m.outer_diameter.left_mm == Approx(108.9282).margin(0.009));
  CHECK(m.outer_diameter.right_mm == Approx(108.9282).margin(0.009));
  CHECK(m.rim_clearance_mm == Approx(80.0 - 54.4641).margin(1e-4));
}

// Turns of 1 mm at 50.5 mm, so far apart that a crest reaches from each to the bare barrel: within 1 mm of a turn's edge it stands
// at the turn's top, beyond that the barrel is felt. The same closed form as above for turns that lie close.
TEST_CASE("mean crests along the axis") {
  const Plan plan = plan_of(draft());
  Progress progress;
  const Build close = nested(plan, 90, 5, 20, 1.0);
  const Surface surface = find_surface(plan, close, progress);
  REQUIRE(surface.crest_mm.size() == surface.profile.x_mm.size());
  for (const double crest : surface.crest_mm) CHECK(2.0 * crest == Approx(108.9282).margin(0.009));
  const Surface one = find_surface(plan, helix(plan, 64, 2.5, 0.0, 3.0), progress);
  for (std::size_t i = 0; i < one.crest_mm.size(); ++i) {
    const double off = std::abs(one.profile.x_mm[i] - 2.5);
    if (off < 0.9) CHECK(one.crest_mm[i] == Approx(51.0).margin(0.005));
    if (off > 1.6) CHECK(one.crest_mm[i] == Approx(50.0).margin(1e-6));
  }
}

TEST_CASE("bare barrel shows between turns") {
  const Plan plan = plan_of(draft());
  const Measurements m = measured(plan, helix(plan, 64, 2.5, 0.0, 3.0));
  const SurfaceProfile& p = m.surface;
  for (std::size_t i = 0; i < p.x_mm.size(); ++i) {
    CHECK(p.x_mm[i] == Approx((static_cast<double>(i) + 0.5) * 20.5 / static_cast<double>(p.x_mm.size())));
    const double off = p.x_mm[i] - 2.5;
    const double expected = std::abs(off) < 0.5 ? 50.5 + std::sqrt(0.25 - off * off) : 50.0;
    CHECK(p.mean_mm[i] == Approx(expected).margin(2e-5));
    CHECK(p.least_mm[i] == Approx(p.greatest_mm[i]).margin(1e-9));
  }
}

TEST_CASE("least and greatest over the angle") {
  const Plan plan = plan_of(draft());
  BuildMaker maker(plan, 64);
  maker.stroke(1, 1, [](double turn) { return Place{10.0, turn < 0.5 - 1e-9 ? 50.5 : 51.5}; });
  const Measurements m = measured(plan, maker.finish());
  const auto at = static_cast<std::size_t>(10.0 / 20.5 * static_cast<double>(m.surface.x_mm.size()));
  const double crest = std::sqrt(0.25 - std::pow(m.surface.x_mm[at] - 10.0, 2));
  CHECK(m.surface.least_mm[at] == Approx(50.5 + crest).margin(1e-5));
  CHECK(m.surface.greatest_mm[at] == Approx(51.5 + crest).margin(1e-5));
  CHECK(m.surface.mean_mm[at] == Approx(51.0 + crest).margin(1e-5));
}

TEST_CASE("the mean surface of a helix at pitch d lies pi/8 d over the centre line") {
  const Plan plan = plan_of(draft());
  const Measurements m = measured(plan, helix(plan, 256, 0.5, 1.0, 19.5));
  const SurfaceProfile& p = m.surface;
  for (std::size_t i = p.x_mm.size() / 4; i < 3 * p.x_mm.size() / 4; ++i) {
    CHECK(p.mean_mm[i] == Approx(50.5 + pi / 8.0).margin(2e-3));
  }
}

// Closed form: one layer of n straight turns side by side at pitch d fills a ring up to pi/8 d over its centres.
TEST_CASE("fill factor is fiber over the volume under the mean surface") {
  PlanDraft exact = draft();
  exact.spool.inside_width_mm = 20.0;
  const Plan plan = plan_of(exact);
  BuildMaker maker(plan, 128);
  maker.stroke(1, 20, [](double turn) { return Place{0.5 + std::floor(turn + 1e-9), 50.5, Support::barrel}; });
  Build build = maker.finish(20.0);
  const double fiber = pi / 4.0 * 2.0 * pi * 50.5 * 20.0;
  build.length_mm = 2.0 * pi * 50.5 * 20.0;
  const double mean = 50.5 + pi / 8.0;
  const Measurements m = measured(plan, build);
  // Where every turn falls on the same eight points, they find its mean height .0053 d too high.
  CHECK(m.fill_factor == Approx(fiber / (pi * (std::pow(mean + 0.0053, 2) - 2500.0) * 20.0)).epsilon(3e-4));
}

TEST_CASE("many nested layers fill towards pi/sqrt(12), never beyond") {
  PlanDraft deep = draft();
  deep.spool.inside_width_mm = 100.5;
  const Plan plan = plan_of(deep);
  const Measurements m = measured(plan, nested(plan, 32, 30, 100, 1.0));
  CHECK(m.fill_factor < 0.9069);
  CHECK(m.fill_factor > 0.885);
}

TEST_CASE("what a tapered flange opens counts only where fiber lies over it") {
  PlanDraft tapered = draft();
  tapered.spool.flange_taper_rad = 0.1;
  const Plan square = plan_of(draft());
  const Plan open = plan_of(tapered);
  const Build short_of_it = nested(square, 32, 5, 20, 1.0);
  CHECK(measured(open, short_of_it).fill_factor == Approx(measured(square, short_of_it).fill_factor).epsilon(1e-9));
}

TEST_CASE("edges and middle are measured apart") {
  PlanDraft wide = draft();
  wide.spool.inside_width_mm = 200.0;  // edge zones of 10 mm
  const Plan plan = plan_of(wide);
  BuildMaker maker(plan, 32);
  maker.stroke(1, 200, [](double turn) { return Place{0.5 + std::floor(turn + 1e-9), turn < 180.0 ? 50.5 : 51.5}; });
  const Measurements m = measured(plan, maker.finish(200.0));
  CHECK(m.outer_diameter.left_mm == Approx(102.0).margin(0.009));
  CHECK(m.outer_diameter.middle_mm == Approx(102.0).margin(0.009));
  CHECK(m.outer_diameter.right_mm == Approx(104.0).margin(0.009));
  CHECK(m.outer_diameter.greatest_at->x_mm == Approx(180.5).margin(1e-6));  // of equals, the first
  CHECK(m.outer_diameter.greatest_at->angle_deg == 0.0);
}

TEST_CASE("a coarse first layer has the diameter of its turns, not of the bare barrel between them") {
  for (const double pitch : {2.5, 4.0, 9.7}) {
    INFO("pitch " << pitch);
    PlanDraft coarse = draft();
    coarse.spool.inside_width_mm = 200.0;
    coarse.traverse.pitch_mm = pitch;
    const Plan plan = plan_of(coarse);
    const Measurements m = measured(plan, helix(plan, 64, 0.5, pitch, 199.0 / pitch));
    CHECK(m.outer_diameter.middle_mm == Approx(102.0).margin(0.009));
    // A layer that a step makes coarse.
    PlanDraft stepped = coarse;
    stepped.traverse.pitch_mm = 1.0;
    stepped.wind.steps = {{1, pitch, {}, {}}};
    CHECK(measured(plan_of(stepped), helix(plan, 64, 0.5, pitch, 199.0 / pitch)).outer_diameter.middle_mm ==
          m.outer_diameter.middle_mm);
  }
}

TEST_CASE("a mirrored build has mirrored measurements") {
  const Plan plan = plan_of(draft());
  const double width = plan.spool().inside_width_mm;
  const auto wavy = [](double turn) {
    return Place{0.5 + 1.1 * turn + 0.05 * std::sin(3.0 * turn), 50.5 + 0.02 * turn, Support::barrel};
  };
  const auto back = [](double turn) { return Place{19.5 - 1.3 * turn, 51.4 + 0.3 * std::sin(turn)}; };
  const auto mirrored = [width](auto at) {
    return [width, at](double turn) {
      Place place = at(turn);
      place.x = width - place.x;
      return place;
    };
  };
  const Measurements a = measured(plan, BuildMaker(plan, 100).stroke(1, 17, wavy).stroke(-1, 12, back).finish());
  const Measurements b =
      measured(plan, BuildMaker(plan, 100).stroke(-1, 17, mirrored(wavy)).stroke(1, 12, mirrored(back)).finish());
  CHECK(a.outer_diameter.left_mm == Approx(b.outer_diameter.right_mm).margin(1e-4));
  CHECK(a.outer_diameter.middle_mm == Approx(b.outer_diameter.middle_mm).margin(1e-4));
  CHECK(a.fill_factor == Approx(b.fill_factor).epsilon(1e-5));
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(a.layers[i].crossings == b.layers[i].crossings);
    CHECK(a.layers[i].mean_diameter_mm == Approx(b.layers[i].mean_diameter_mm).epsilon(1e-9));
  }
  // A gap is counted on the turn to its left, which lies at another radius in the mirror.
  CHECK(a.layers[1].gap_length_mm == Approx(b.layers[1].gap_length_mm).epsilon(0.01));
  CHECK(*a.layers[1].mean_rise_d == Approx(*b.layers[1].mean_rise_d).epsilon(1e-6));
}

TEST_CASE("measurements scale with the build") {
  PlanDraft big = draft();
  for (double* mm : {&big.spool.barrel_diameter_mm, &big.spool.flange_diameter_mm, &big.spool.inside_width_mm,
                     &big.fiber.diameter_mm, &big.traverse.pitch_mm, &big.traverse.left_stop_mm,
                     &big.traverse.right_stop_mm, &big.traverse.free_length_mm}) {
    *mm *= 3.0;
  }
  const Plan plan = plan_of(draft());
  const Plan plan3 = plan_of(big);
  const Measurements a = measured(plan, nested(plan, 60, 4, 18, 1.1));
  const Measurements b = measured(plan3, nested(plan3, 60, 4, 18, 3.3));
  CHECK(b.outer_diameter.middle_mm == Approx(3.0 * a.outer_diameter.middle_mm).epsilon(1e-6));
  CHECK(b.fill_factor == Approx(a.fill_factor).epsilon(1e-5));
  CHECK(b.layers[3].length_mm == Approx(3.0 * a.layers[3].length_mm).epsilon(1e-6));
  CHECK(*b.layers[3].mean_rise_d == Approx(*a.layers[3].mean_rise_d).epsilon(1e-6));
}

TEST_CASE("mass and wind time follow from length") {
  PlanDraft known = draft();
  known.fiber.linear_mass_g_per_km = 66.0;
  known.wind.line_speed_mm_per_s = 1000.0;
  const Plan plan = plan_of(known);
  Build build = nested(plan, 30, 2, 20, 1.0);
  build.length_mm = 2.5e7;  // 25 km
  const Measurements m = measured(plan, build);
  CHECK(*m.fiber_mass_kg == Approx(1.65));
  CHECK(*m.wind_time_s == Approx(25000.0));
  const Measurements bare = measured(plan_of(draft()), build);
  CHECK_FALSE(bare.fiber_mass_kg);
  CHECK_FALSE(bare.wind_time_s);
}
