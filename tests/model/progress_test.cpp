// How far a wind is, whatever ends it.
#include <algorithm>
#include <vector>

#include <catch2/catch.hpp>

#include "model/wound.h"

using namespace laywright;

TEST_CASE("progress begins with nothing, rises, and ends with the whole, whatever ends the wind") {
  PlanDraft draft = testing::sample("even").draft();
  Wind by_turns, by_length, by_diameter;
  by_turns.turns = 60.0;
  by_length.length_mm = 30e3;
  by_diameter.diameter_mm = draft.spool.barrel_diameter_mm + 3.0 * draft.fiber.diameter_mm;
  for (const Wind& wind : {by_turns, by_length, by_diameter}) {
    draft.wind = wind;
    const Result<Plan> plan = check(draft);
    REQUIRE(plan.ok());
    std::vector<double> shares;
    Progress progress([&](double share) { shares.push_back(share); });
    LaySettings coarse;
    coarse.fidelity = 0.25;
    const Result<Build> build = lay(plan.value(), coarse, progress);
    CAPTURE(wind.turns.has_value(), wind.length_mm.has_value(), wind.diameter_mm.has_value());
    REQUIRE(build.ok());
    REQUIRE(shares.size() > 20);
    CHECK(shares.front() == 0.0);
    CHECK(std::is_sorted(shares.begin(), shares.end()));
    CHECK(shares.back() == 1.0);
  }
}
