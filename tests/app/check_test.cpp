#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

TEST_CASE("without a display the window says what it needs, and what would do instead") {
  for (const char* command : {"", " open"}) {
    const Ran ran = Workshop().run(std::string("env -u DISPLAY -u WAYLAND_DISPLAY $LW") + command);
    CHECK(ran.code == 3);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains("display"));
    CHECK_THAT(ran.err, Contains("laywright picture"));
  }
}

TEST_CASE("the help says how to start") {
  CHECK_THAT(Workshop().run("$LW --help").out, Contains("laywright lay samples/even.lay.toml"));
}

TEST_CASE("help and version go to standard output") {
  const Workshop shop;
  CHECK_THAT(shop.run("$LW --version").out, Contains("laywright " LAYWRIGHT_VERSION));
  for (const char* command : {"$LW --help", "$LW lay --help", "$LW check --help"}) {
    const Ran ran = shop.run(command);
    CAPTURE(command);
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("laywright "));
    CHECK(ran.err.empty());
  }
}

TEST_CASE("a wrong command line is 2, and says what is wrong") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  for (const char* command :
       {"$LW lay a.lay.toml --no-such-thing", "$LW unwind a.lay.toml", "$LW lay", "$LW check",
        "$LW lay a.lay.toml --fidelity 0", "$LW lay a.lay.toml --seed -1", "$LW lay a.lay.toml --angle 10"}) {
    const Ran ran = shop.run(command);
    CAPTURE(command);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK_FALSE(ran.err.empty());
  }
}

TEST_CASE("sound plans are 0, one broken plan among them is 1 and is shown with its place") {
  const Workshop shop;
  shop.write("good.lay.toml", small_plan());
  std::string broken = small_plan();
  broken.replace(broken.find("\"0.53 mm\""), 9, "\"-0.53 mm\"");
  shop.write("bad.lay.toml", broken);

  const Ran good = shop.run("$LW check good.lay.toml");
  CHECK(good.code == 0);
  CHECK(good.out == "good.lay.toml: sound\n");

  const Ran mixed = shop.run("$LW check good.lay.toml bad.lay.toml");
  CHECK(mixed.code == 1);
  CHECK_THAT(mixed.out, Contains("good.lay.toml  sound\n") && Contains("bad.lay.toml   not sound\n") &&
                            Contains("      line 12: traverse.pitch: "));
  CHECK_THAT(mixed.err, Contains("bad.lay.toml:12: error: traverse.pitch"));

  const Ran absent = shop.run("$LW check nowhere.lay.toml");
  CHECK(absent.code == 1);
  CHECK_THAT(absent.err, Contains("nowhere.lay.toml"));
}

TEST_CASE("every sample is a sound plan") {
  const Ran ran = Workshop().run("$LW check " LAYWRIGHT_SOURCE_DIR "/samples/*.lay.toml");
  CHECK(ran.err.empty());
  CHECK(ran.code == 0);
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') >= 9);
}
