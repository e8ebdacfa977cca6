// What is told of words where a command should stand.
#include <string>

#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

TEST_CASE("an unknown command is told with the nearest one") {
  const Workshop shop;
  const Ran near = shop.run("$LW payof a.lay.toml");
  CHECK(near.code == 2);
  CHECK_THAT(near.err, Contains("error: \"payof\" is no command of laywright; did you mean payoff?"));
  CHECK(near.out.empty());
  const Ran far = shop.run("$LW elephants");
  CHECK(far.code == 2);
  CHECK_THAT(far.err, Contains("the commands are new, check, lay"));
}

TEST_CASE("a plan where a command should stand is told how to open it") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run("$LW a.lay.toml");
  CHECK(ran.code == 2);
  CHECK_THAT(ran.err, Contains("to open a plan: laywright open a.lay.toml"));
}

TEST_CASE("an unknown option of a known command is told as such") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run("$LW check a.lay.toml --flaten");
  CHECK(ran.code == 2);
  CHECK_THAT(ran.err, Contains("--flaten") && !Contains("is no command"));
}
