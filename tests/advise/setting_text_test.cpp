#include <catch2/catch.hpp>

#include "advise/setting_text.h"
#include "narrow_plan.h"

using namespace laywright;

TEST_CASE("values on a command line are read as in a plan") {
  const PlanDraft draft = laywright::testing::narrow_draft();
  CHECK(read_setting(draft, "traverse.pitch", "0.01 in").value() == Approx(0.254));
  CHECK(read_setting(draft, "traverse.pitch", "0.26mm").value() == Approx(0.26));
  CHECK(read_setting(draft, "traverse.reversal.turns", "2.5").value() == 2.5);
  CHECK(read_setting(draft, "fiber.friction", "held").value() == Fiber::held);
  CHECK(read_setting(draft, "traverse.reversal.kind", "dwell").value() == 1.0);
  const Result<double> bare = read_setting(draft, "traverse.pitch", "0.26");
  REQUIRE_FALSE(bare.ok());
  CHECK(bare.issues().front().what.find("mm") != std::string::npos);
  const Result<double> unknown = read_setting(draft, "traverse.pich", "0.26 mm");
  REQUIRE_FALSE(unknown.ok());
  CHECK(unknown.issues().front().what.find("traverse.pitch") != std::string::npos);
  CHECK_FALSE(read_setting(draft, "traverse.reversal.turns", "two").ok());
}
