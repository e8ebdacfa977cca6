// Diameters left, middle and right from a rendered photograph, and how they are told.
#include "photo/profile_report.h"

#include <cmath>
#include <string>

#include <catch2/catch.hpp>

#include "photo/rendered_spool.h"
#include "photo/spool_plan.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

// Made of three levels: what each zone must come to stands in it.
EdgeProfile stepped(double px_per_mm) {
  EdgeProfile profile;
  profile.found.px_per_mm = px_per_mm;
  profile.found.edge_width_px = 4.0;
  for (double x = 2.0; x <= 95.0; x += 0.05) {
    profile.x_mm.push_back(x);
    profile.diameter_mm.push_back(x < 10.0 ? 205.0 : x > 85.0 ? 195.0 : 200.0);
    profile.noise_mm.push_back(0.1);
    profile.shared_mm.push_back(0.2);
  }
  return profile;
}

}  // namespace

TEST_CASE("profile: diameters of the zones, with what of them is seen") {
  const Plan plan = plan_of(RenderedSpool{}, 1.0);
  const auto zones = zone_diameters(stepped(4.0), plan);
  REQUIRE((zones[0] && zones[1] && zones[2]));
  CHECK(zones[0]->diameter_mm == Approx(205.0));
  CHECK(zones[1]->diameter_mm == Approx(200.0));
  CHECK(zones[2]->diameter_mm == Approx(195.0));
  // 2 of the first 4.75 mm are hidden.
  CHECK(zones[0]->seen_share == Approx(2.75 / 4.75).margin(0.02));
  CHECK(zones[1]->seen_share == Approx(1.0).margin(0.02));
  // Noise of many columns is averaged away, what they share is not.
  CHECK(zones[1]->sigma_mm == Approx(0.2).margin(0.002));
  EdgeProfile hidden = stepped(4.0);
  for (double& x : hidden.x_mm) x += 4.0;
  CHECK_FALSE(zone_diameters(hidden, plan)[0]);
}

TEST_CASE("profile: crests count where the picture shows each turn") {
  const Plan plan = plan_of(RenderedSpool{}, 1.0);
  EdgeProfile turns = stepped(10.0);
  // Circles of 1 mm side by side, their centres on 199 mm: crests at 200 mm.
  for (std::size_t i = 0; i < turns.x_mm.size(); ++i) {
    const double off = turns.x_mm[i] - std::floor(turns.x_mm[i]) - 0.5;
    turns.diameter_mm[i] = 199.0 + 2.0 * std::sqrt(0.25 - off * off);
  }
  CHECK(shows_turns(turns, plan));
  CHECK(zone_diameters(turns, plan)[1]->diameter_mm == Approx(200.0).margin(0.01));
  turns.found.px_per_mm = 3.0;
  CHECK_FALSE(shows_turns(turns, plan));
  // The mean of a half circle's height is pi / 4 of its radius.
  CHECK(zone_diameters(turns, plan)[1]->diameter_mm == Approx(199.0 + 0.7854).margin(0.02));
  CHECK_THAT(profile_text(plan, turns, {}), Contains("by up to 0.21 mm in diameter"));
}

TEST_CASE("profile: text and table stand beside the plan") {
  const Plan plan = plan_of(RenderedSpool{}, 1.0);
  PlannedThen planned{
      "at the end of the wind", std::array<double, 3>{204.0, 200.5, 195.0}, {}, {0.0, 95.0}, {200.0, 201.9}};
  const std::string text = profile_text(plan, stepped(4.0), planned);
  CHECK_THAT(text, Contains("at the end of the wind") && Contains("+1.00") && Contains("-0.50"));
  CHECK_THAT(text, !Contains("not whole"));
  planned.unfinished = UnfinishedLayer{17, 60.0, 74.1, {}};
  CHECK_THAT(
      profile_text(plan, stepped(4.0), planned),
      Contains(
          "The build's last layer is not whole: layer 17 ends after 60.0 turns, 74.10 mm from the left\nflange."));
  // Nine digits, as in all tables for programs: the root of 0.05.
  CHECK_THAT(profile_csv(stepped(4.0), planned),
             Contains("x_mm,diameter_mm,sigma_mm,planned_mm\n2,205,0.223606798,200.04\n"));
  CHECK_THAT(profile_csv(stepped(4.0), {}), Contains("\n2,205,0.223606798,\n"));
  CHECK_THAT(profile_json(plan, stepped(4.0), planned),
             Contains("\"lay-profile 1\"") && Contains("\"planned\": 200.5"));
}
