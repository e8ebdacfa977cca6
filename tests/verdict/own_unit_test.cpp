#include "verdict/own_unit.h"

#include <catch2/catch.hpp>

#include "lay/plans.h"

using namespace laywright;
using namespace laywright::testing;

TEST_CASE("a setting is told as it was written, without the noise of a sum's last digits") {
  const Plan plan = check(plain_draft()).value();
  CHECK(in_own_unit(plan, "traverse.right_stop", 0.5015000000000001) == "0.5015 mm");
  CHECK(in_own_unit(plan, "traverse.right_stop", 0.123456789) == "0.123456789 mm");
  CHECK(in_own_unit(plan, "traverse.right_stop", 0.123456789, 3) == "0.123 mm");
}
