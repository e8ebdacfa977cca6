#include <string>

#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

// A wind that usual settings lay well (tests/advise/begin_test.cpp), in a moment.
const std::string good = " --spool '100 x 160 x 50 mm' --fiber '1 mm' --length '60 m' ";
// One whose pitch leaves gaps.
const std::string gaps = good + "--set traverse.pitch='1.6 mm' --trials 20 ";

// Answers typed on a terminal; what the program shows there comes to standard output.
Ran typed(const Workshop& shop, const std::string& arguments, const std::string& answers) {
  shop.write("answers", answers);
  return shop.run("export XDG_CONFIG_HOME=\"$PWD\"; script -qec \"$LW new " + arguments + "\" /dev/null < answers");
}

}  // namespace

TEST_CASE("new writes a sound plan, and lay gives it the verdict that was told") {
  const Workshop shop;
  const Ran made = shop.run("$LW new a.lay.toml" + good);
  INFO(made.err);
  CHECK(made.code == 0);
  CHECK_THAT(made.out,
             Contains("a.lay.toml: Good (each of 5 draws)") && Contains("traverse.pitch            1.04 mm"));
  CHECK(shop.run("$LW check a.lay.toml").out == "a.lay.toml: sound\n");
  CHECK_THAT(shop.run("$LW lay a.lay.toml --draws 5").out, Contains("Good (each of 5 draws)"));
  CHECK_THAT(content(shop.at("a.lay.toml")), Contains("# The settings of the traverse were laid and judged"));
}

TEST_CASE("without a file the plan is printed") {
  const Workshop shop;
  const Ran made = shop.run("$LW new" + good + "> b.lay.toml");
  CHECK(made.code == 0);
  CHECK(made.err.empty());
  CHECK(shop.run("$LW check b.lay.toml").code == 0);
}

TEST_CASE("new never writes over a file without being told to") {
  const Workshop shop;
  shop.write("a.lay.toml", "mine");
  const Ran made = shop.run("$LW new a.lay.toml" + good);
  CHECK(made.code == 2);
  CHECK_THAT(made.err, Contains("a.lay.toml: is there already") && Contains("--replace"));
  CHECK(content(shop.at("a.lay.toml")) == "mine");
  CHECK(shop.run("$LW new a.lay.toml --replace" + good).code == 0);
  CHECK(shop.run("$LW check a.lay.toml").code == 0);
  std::filesystem::create_directory(shop.at("folder.toml"));
  CHECK(shop.run("$LW new folder.toml" + good).code == 2);
  CHECK(shop.run("$LW new a.txt" + good).code == 2);
}

TEST_CASE("where no good wind is found, that is told, and nothing is written") {
  const Workshop shop;
  const Ran made = shop.run("$LW new a.lay.toml" + gaps);
  CHECK(made.code == 1);
  CHECK_THAT(made.err, Contains("No good wind was found") && Contains("traverse.pitch            1.6 mm") &&
                           Contains("Do not wind") && Contains("--best"));
  CHECK_FALSE(std::filesystem::exists(shop.at("a.lay.toml")));
  const Ran best = shop.run("$LW new a.lay.toml --best" + gaps);
  CHECK(best.code == 0);
  CHECK_THAT(best.out, Contains("Do not wind"));
  CHECK(shop.run("$LW check a.lay.toml").code == 0);
}

TEST_CASE("what options lack, or cannot mean, is told by option") {
  const Workshop shop;
  const Ran none = shop.run("$LW new a.lay.toml");
  CHECK(none.code == 2);
  CHECK_THAT(none.err,
             Contains("--spool: is missing") && Contains("--fiber: is missing") && Contains("--length: is missing"));
  CHECK_THAT(shop.run("$LW new" + good + "--free-length '5 N'").err, Contains("--free-length = \"5 N\""));
  CHECK_THAT(shop.run("$LW new" + good + "--set traverse.pich='1 mm'").err, Contains("is no key of a plan"));
  const Ran unsound = shop.run("$LW new --spool '100 x 90 x 50 mm' --fiber '1 mm' --length '60 m'");
  CHECK(unsound.code == 1);
  CHECK_THAT(unsound.err, Contains("the flange must be larger"));
}

TEST_CASE("a stopped search writes nothing") {
  const Workshop shop;
  const Ran stopped =
      shop.stopped("new a.lay.toml --spool '100 x 400 x 90 mm' --fiber '0.1 mm' --length '200 km'", "INT", 0.2);
  CHECK(stopped.code == 130);
  CHECK_THAT(stopped.err, Contains("stopped; nothing was written"));
  CHECK_FALSE(std::filesystem::exists(shop.at("a.lay.toml")));
}

TEST_CASE("on a terminal it asks, and asks again where an answer will not do") {
  const Workshop shop;
  const Ran asked = typed(shop, "", "?\n4 by 6\n100 x 160 x 50 mm\n1 mm\n60\n60 m\n\n\n\nmine\n");
  INFO(asked.out);
  CHECK(asked.code == 0);
  CHECK_THAT(asked.out, Contains("IEC 60264 100") && Contains("is in no catalogue of spools") &&
                            Contains("has no unit") && Contains("[50 mm]") && Contains("mine.lay.toml: Good"));
  CHECK(shop.run("$LW check mine.lay.toml").code == 0);
}

TEST_CASE("on a terminal a file that is there is told before the wind is laid") {
  const Workshop shop;
  shop.write("mine.lay.toml", "mine");
  const Ran asked = typed(shop, "", "100 x 160 x 50 mm\n1 mm\n60 m\n\n\n\nmine\nother\n");
  CHECK_THAT(asked.out, Contains("mine.lay.toml is there already"));
  CHECK(content(shop.at("mine.lay.toml")) == "mine");
  CHECK(shop.run("$LW check other.lay.toml").code == 0);
}
