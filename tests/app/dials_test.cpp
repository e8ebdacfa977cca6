// A machine's dials on the command line: calibrated, checked, and saved by improve as what can be set.
#include <string>

#include <catch2/catch.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

TEST_CASE("calibrate prints a dial that a plan takes as it is") {
  const Workshop shop;
  const Ran ran = shop.run("$LW calibrate pitch 20=\"0.25 mm\" 40=\"0.5 mm\" --unit teeth --step 1");
  CHECK(ran.err.empty());
  REQUIRE(ran.code == 0);
  CHECK_THAT(ran.out, Contains("[machine.dials.pitch]\nunit = \"teeth\"\nper_unit = \"0.0125 mm\"\nstep = 1\n"));
  CHECK_THAT(ran.out, Contains("take a third"));
  shop.write("a.lay.toml", small_plan() + ran.out.substr(ran.out.find("\n[machine")));
  const Ran checked = shop.run("$LW check a.lay.toml");
  CHECK(checked.err.empty());
  // 0.53 mm are 42.4 teeth.
  CHECK_THAT(checked.out, Contains("Set on the machine:") && Contains("42 teeth  = 0.525 mm, asked 0.53 mm"));
  CHECK_THAT(shop.run("$LW lay a.lay.toml").out, Contains("42 teeth  = 0.525 mm, asked 0.53 mm"));

  const Ran points = shop.run(
      "$LW calibrate tension 0.2=\"1.7 N\" 0.1=\"0.7 N\" 0.3=\"3.2 N\" --unit A --points --diameter \"60 mm\"");
  CHECK_THAT(points.out,
             Contains("diameter = \"60 mm\"\npoints = [[0.1, \"0.7 N\"], [0.2, \"1.7 N\"], [0.3, \"3.2 N\"]]"));
  const Ran inverse = shop.run("$LW calibrate pitch 50=\"0.02 in\" 100=\"0.01 in\" --inverse");
  CHECK_THAT(inverse.out, Contains("per_unit = \"25.4 mm\"\nlaw = \"inverse\""));
}

TEST_CASE("calibrate refuses what makes no dial") {
  const Workshop shop;
  const auto refused = [&](const std::string& arguments, const std::string& words) {
    const Ran ran = shop.run("$LW calibrate " + arguments);
    INFO(arguments);
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(words));
  };
  refused("pitch 20=\"0.25 mm\"", "two readings or more");
  refused("pitch 20=\"0.25 mm\" 20=\"0.26 mm\"", "has the reading 20 twice");
  refused("pitch 20=\"0.25 mm\" 30=\"0.25 mm\"", "the same at all readings");
  refused("pitch 20=\"0.25 N\" 30=\"0.25 mm\"", "20=0.25 N");
  refused("pitch 20 30=\"0.25 mm\"", "must be a reading of the dial and what it gave");
  refused("pich 20=\"0.25 mm\" 30=\"0.3 mm\"", "did you mean pitch?");
  refused("tension 1=\"1 N\" 2=\"3 N\" 3=\"2 N\" --points", "turns back");
  refused("pitch 20=\"0.25 mm\" 30=\"0.3 mm\" --diameter \"60 mm\"", "belongs to the dial tension");
}
