// What goes to standard output and standard error.
#include <string>

#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

TEST_CASE("what cannot be written is not done, whatever it is") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* command : {"--help", "--version", "lay --help", "check a.lay.toml", "lay a.lay.toml",
                              "capacity a.lay.toml --json", "fit a.lay.toml --template"}) {
    CAPTURE(command);
    const Ran ran = shop.run("$LW " + std::string(command) + " >/dev/full");
    CHECK(ran.code == 3);
    CHECK_THAT(ran.err, Contains("cannot write"));
  }
  // Of a warning, too.
  std::string warned = small_plan();
  warned.replace(warned.find("\"instant\"\n"), 10, "\"instant\"\nturns = 5\n");  // not used, and told
  shop.write("warned.lay.toml", warned);
  REQUIRE(shop.run("$LW check warned.lay.toml").code == 0);
  REQUIRE_FALSE(shop.run("$LW check warned.lay.toml").err.empty());
  CHECK(shop.run("$LW check warned.lay.toml 2>/dev/full").code == 3);
}
