// The profile of rendered spools of known outline, and photographs that are refused. All pictures are rendered here
// (rendered_spool.h).
#include "photo/edge_profile.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include <catch2/catch.hpp>

#include "photo/rendered_spool.h"
#include "photo/spool_plan.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

// A ridge at the left flange, a valley at the right one, a slow wave between.
double uneven_wind(double x) {
  return 200.0 + 5.0 * std::exp(-x / 6.0) - 6.0 * std::exp((x - 95.0) / 7.0) +
         0.8 * std::sin(2.0 * std::numbers::pi * x / 40.0);
}

RenderedSpool wire_spool() {
  RenderedSpool spool;
  spool.diameter_mm = uneven_wind;
  return spool;
}

// Of what is seen; the greatest also over its own sigma.
struct Errors {
  double greatest_mm = 0.0, in_sigmas = 0.0;
};

Errors errors_of(const EdgeProfile& profile, const RenderedSpool& spool) {
  Errors errors;
  for (std::size_t i = 0; i < profile.x_mm.size(); ++i) {
    const double off = std::abs(profile.diameter_mm[i] - spool.diameter_mm(profile.x_mm[i]));
    errors.greatest_mm = std::max(errors.greatest_mm, off);
    errors.in_sigmas = std::max(errors.in_sigmas, off / profile.sigma_mm(i));
  }
  return errors;
}

EdgeProfile profile_of(const GreyPhoto& photo, const RenderedSpool& spool, double fiber_mm,
                       std::optional<double> distance_mm) {
  Result<EdgeProfile> profile = edge_profile(photo, plan_of(spool, fiber_mm), {distance_mm});
  for (const Issue& issue : profile.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(profile.ok());
  return std::move(profile).value();
}

// Why that picture of a spool is not taken by a plan for `planned`.
std::string refusal(const RenderedSpool& spool, const RenderedView& view, const RenderedSpool& planned,
                    PhotoSettings settings = {}, double fiber_mm = 1.0) {
  const Result<EdgeProfile> profile = edge_profile(rendered(spool, view), plan_of(planned, fiber_mm), settings);
  REQUIRE_FALSE(profile.ok());
  return profile.issues()[0].what;
}

std::string refusal(const RenderedView& view) { return refusal(wire_spool(), view, wire_spool()); }

}  // namespace

TEST_CASE("edge profile: a spool of 1 mm wire, seen in many ways, within half a wire and its own uncertainty") {
  const RenderedSpool spool = wire_spool();
  std::vector<RenderedView> views(6);
  views[1].tilt_deg = -6.0, views[1].blur_px = 2.5;
  views[2].yaw_deg = 4.0;
  views[3].uneven = 0.5, views[3].noise = 6.0, views[3].tilt_deg = 3.0;
  views[4].distance_mm = 700.0, views[4].right_mm = 15.0, views[4].up_mm = -20.0;
  views[5].tilt_deg = 2.0, views[5].yaw_deg = -3.0, views[5].distance_mm = 1000.0;
  for (const RenderedView& view : views) {
    const GreyPhoto photo = rendered(spool, view);
    for (const bool given : {true, false}) {
      CAPTURE(view.tilt_deg, view.yaw_deg, view.distance_mm, given);
      const EdgeProfile profile =
          profile_of(photo, spool, 1.0, given ? std::optional(view.distance_mm) : std::nullopt);
      const Errors errors = errors_of(profile, spool);
      CHECK(errors.greatest_mm < (given ? 0.15 : 0.5));
      CHECK(errors.in_sigmas < 2.0);
      const PhotoFound& found = profile.found;
      CHECK(found.tilt_deg == Approx(view.tilt_deg).margin(0.05));
      CHECK(found.distance_given == given);
      REQUIRE(found.lens_bend_px);
      CHECK(found.lens_off == 0.0);  // a pinhole bends nothing
      if (given) CHECK(found.yaw_deg == Approx(view.yaw_deg).margin(0.1));
      if (given) CHECK(found.px_per_mm == Approx(view.px_per_mm).epsilon(0.001));
      if (given) CHECK(found.inside_width_mm == Approx(95.0).margin(0.2));
      // Three sigmas.
      CHECK(view.distance_mm > 3.0 * found.distance_least_mm - 2.0 * found.distance_mm - 1e-6);
      CHECK(view.distance_mm < 3.0 * found.distance_most_mm - 2.0 * found.distance_mm + 1e-6);
      CHECK(profile.x_mm.front() < 12.0);
      CHECK(profile.x_mm.back() > 95.0 - 12.0);
      CHECK(profile.x_mm.front() == Approx(found.hidden_left_mm));
    }
  }
}

TEST_CASE("edge profile: 0.25 mm fiber on a shaft between tapered flanges, within 2 % of the build-up") {
  RenderedSpool spool = wire_spool();
  spool.flange_taper_rad = 0.03;
  spool.shaft_diameter_mm = 30.0;
  RenderedView view;
  view.tilt_deg = 1.5;
  const GreyPhoto photo = rendered(spool, view);
  for (const std::optional<double> distance : {std::optional(1500.0), std::optional<double>()}) {
    CAPTURE(distance.has_value());
    const EdgeProfile profile = profile_of(photo, spool, 0.25, distance);
    // The wind's 200 mm on a barrel of 150 mm.
    CHECK(0.5 * errors_of(profile, spool).greatest_mm < 0.02 * 25.0);
    CHECK(errors_of(profile, spool).in_sigmas < 2.0);
    CHECK(profile.found.inside_width_mm == Approx(95.0).margin(0.3));
  }
}

TEST_CASE("edge profile: what the picture leaves open is told as uncertainty") {
  const RenderedSpool spool = wire_spool();
  const RenderedView view;
  const GreyPhoto photo = rendered(spool, view);
  const EdgeProfile given = profile_of(photo, spool, 1.0, view.distance_mm);
  const std::size_t middle = given.x_mm.size() / 2;
  // The spool's own size, 0.1 % of 200 mm, and a tenth of a pixel at each edge.
  CHECK(given.shared_mm[middle] == Approx(std::hypot(0.2, 0.1414 / 4.5)).epsilon(0.02));
  const Plan plan = plan_of(spool, 1.0);
  const Result<EdgeProfile> vague = edge_profile(photo, plan, {std::nullopt, 0.004});
  REQUIRE(vague.ok());
  CHECK(vague.value().shared_mm[middle] > 0.8);
  CHECK(vague.value().found.distance_most_mm - vague.value().found.distance_least_mm > 500.0);
  RenderedView noisy = view;
  noisy.noise = 12.0;
  const EdgeProfile rough = profile_of(rendered(spool, noisy), spool, 1.0, view.distance_mm);
  CHECK(rough.noise_mm[middle] > 3.0 * given.noise_mm[middle]);
}

TEST_CASE(
    "edge profile: a lens that bends straight edges is told, and diameters are as uncertain as it makes them") {
  const RenderedSpool spool = wire_spool();
  RenderedView view;
  const EdgeProfile straight = profile_of(rendered(spool, view), spool, 1.0, view.distance_mm);
  REQUIRE(straight.found.lens_bend_px);
  CHECK(std::abs(*straight.found.lens_bend_px) < 0.15);
  CHECK(straight.found.lens_off == 0.0);
  const std::size_t middle = straight.x_mm.size() / 2;
  for (const double barrel : {0.01, -0.01, 0.02}) {
    CAPTURE(barrel);
    view.barrel = barrel;
    const EdgeProfile bent = profile_of(rendered(spool, view), spool, 1.0, view.distance_mm);
    // u q V^2 to the first order, of an outer edge 51.5 mm from the middle and 118 mm up, at 4.5 px per mm, q = barrel / 700^2.
    CHECK(*bent.found.lens_bend_px ==
          Approx(51.5 * 4.5 * barrel / 700.0 / 700.0 * 531.0 * 531.0).epsilon(0.1).margin(0.1));
    CHECK(bent.shared_mm[middle] > straight.shared_mm[middle]);
    CHECK(errors_of(bent, spool).in_sigmas < 3.0);
  }
  // Without the distance the bend is told by less.
  const EdgeProfile vague = profile_of(rendered(spool, RenderedView{}), spool, 1.0, std::nullopt);
  CHECK(vague.found.lens_sigma_px > straight.found.lens_sigma_px);
  CHECK(std::abs(*vague.found.lens_bend_px) < 2.0 * vague.found.lens_sigma_px);
  view.barrel = 0.06;
  CHECK_THAT(refusal(spool, view, spool, {view.distance_mm}),
             Contains("the lens bends the flanges' outer edges") && Contains("at most 0.5"));
  PhotoSettings shaped{view.distance_mm};
  shaped.flat_flanges = false;
  const Result<EdgeProfile> taken = edge_profile(rendered(spool, view), plan_of(spool, 1.0), shaped);
  REQUIRE(taken.ok());
  CHECK_FALSE(taken.value().found.lens_bend_px);
}

TEST_CASE("edge profile: a picture that cannot be trusted is refused, and says why") {
  const RenderedSpool spool = wire_spool();
  RenderedView view;
  view.tilt_deg = 10.0;
  CHECK_THAT(refusal(view), Contains("tilted by 10.0 deg") && Contains("at most 8"));
  view = {};
  view.ground = 60.0, view.spool = 225.0;
  CHECK_THAT(refusal(view), Contains("ground is not lighter"));
  view.ground = 120.0, view.spool = 100.0;
  CHECK_THAT(refusal(view), Contains("hardly lighter"));
  view = {};
  view.right_mm = 120.0;
  CHECK_THAT(refusal(view), Contains("over the picture's right border"));
  view.right_mm = -120.0;
  CHECK_THAT(refusal(view), Contains("over the picture's left border"));
  view = {};
  view.up_mm = 40.0;
  CHECK_THAT(refusal(view), Contains("over the picture's upper border"));
  view = {};
  view.blur_px = 6.0;
  CHECK_THAT(refusal(view), Contains("too blurred"));
  view = {};
  view.yaw_deg = 12.0;
  CHECK_THAT(refusal(spool, view, spool, {1500.0}), Contains("runs away from the camera by"));
  view = {};
  CHECK_THAT(refusal(spool, view, spool, {}, 0.1), Contains("fiber is 0.45 px thick"));
  RenderedSpool unlike = spool;
  unlike.right_flange_off_mm = -12.0;
  CHECK_THAT(refusal(unlike, view, spool, {1500.0}), Contains("5.1 % less high than the left one"));
}

TEST_CASE("edge profile: another spool than the plan's, or none, is refused") {
  RenderedSpool spool = wire_spool();
  const RenderedView view;
  RenderedSpool wider = spool;
  wider.inside_width_mm = 99.0;
  CHECK_THAT(refusal(spool, view, wider, {1500.0}), Contains("contradicts the plan") && Contains("99.00 mm"));
  wider.inside_width_mm = 110.0;
  CHECK_THAT(refusal(spool, view, wider), Contains("contradicts the plan") && Contains("no distance"));
  RenderedSpool full = spool;
  full.diameter_mm = [](double) { return 235.0; };
  CHECK_THAT(refusal(full, view, spool), Contains("no two flanges"));
  // A flange at the left alone.
  RenderedSpool one = spool;
  one.diameter_mm = [](double x) { return x < 4.0 ? 236.0 : 200.0; };
  one.flange_diameter_mm = 200.0;
  CHECK_THAT(refusal(one, view, spool), Contains("no two flanges"));
}
