#include <catch2/catch.hpp>

#include "plan/plan_name.h"

using namespace laywright;

TEST_CASE("a plan's name gets its ending where it has none") {
  CHECK(with_plan_ending("spool") == "spool.lay.toml");
  CHECK(with_plan_ending("out/spool") == "out/spool.lay.toml");
  CHECK(with_plan_ending("spool.lay") == "spool.lay.toml");
  CHECK(with_plan_ending("spool 0.25") == "spool 0.25.lay.toml");
  CHECK(with_plan_ending("spool.lay.toml") == "spool.lay.toml");
  CHECK(with_plan_ending("spool.TOML") == "spool.TOML");
  CHECK(with_plan_ending("") == "");
  CHECK(with_plan_ending("out/") == "out/");
}
