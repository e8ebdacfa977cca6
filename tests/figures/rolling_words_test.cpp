#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "figures/rolling_words.h"
#include "lay/plans.h"
#include "lay/torsion.h"

using namespace laywright;

TEST_CASE("what a build was laid with of the fiber's rolling is named, with what was assumed") {
  PlanDraft draft = testing::plain_draft();
  const auto assumed = rolling_block(testing::sound(draft));
  CHECK(assumed.at("assumed") == nlohmann::json({"fiber.modulus", "fiber.core_diameter", "wind.tension"}));
  CHECK_THAT(rolling_words(testing::sound(draft)), Catch::Contains("(assumed: glass, "));

  draft.fiber.modulus_MPa = 72e3;
  draft.fiber.core_diameter_mm = 0.125;
  draft.wind.tension_N = 0.5;
  const Plan plan = testing::sound(draft);
  const auto block = rolling_block(plan);
  CHECK(block.at("assumed").empty());
  CHECK(block.at("rolls") == true);
  CHECK(block.at("twist_stiffness_N") == torsion_of(plan).stiffness_N);
  CHECK(block.at("critical_length") == critical_length_mm(torsion_of(plan).over_tension(), 0.25, 75.0));
  // K = 4 G J / d^2 by hand: 4 * 28.8 GPa * pi / 32 * (0.125 mm)^4 / (0.25 mm)^2 = 44.2 N.
  CHECK_THAT(rolling_words(plan),
             Catch::Contains("twist adds 44.2 N to a pull of 0.500 N") && !Catch::Contains("assumed"));

  CHECK(block.at("soft") == false);
  CHECK(block.at("slack_depth") == slack_depth_mm(plan, torsion_of(plan)));

  PlanDraft yarn = draft;
  yarn.fiber.modulus_MPa = 400.0;
  yarn.fiber.core_diameter_mm = 0.25;
  CHECK(rolling_block(testing::sound(yarn)).at("soft") == true);
  CHECK_THAT(rolling_words(testing::sound(yarn)), Catch::Contains("soft: laid turns near a slope give way"));

  draft.fiber.section = FiberSection::flat;
  CHECK(rolling_block(testing::sound(draft)).at("critical_length").is_null());
  CHECK_THAT(rolling_words(testing::sound(draft)), Catch::Contains("does not roll") && !Catch::Contains("soft"));
  yarn.fiber.section = FiberSection::flat;
  CHECK_THAT(rolling_words(testing::sound(yarn)), Catch::Contains("does not roll; soft"));
  yarn.fiber.friction = Fiber::held;
  yarn.fiber.section = FiberSection::round;
  CHECK(rolling_block(testing::sound(yarn)).at("soft") == false);
  CHECK(rolling_words(testing::sound(yarn)) == "held where it lands");
}
