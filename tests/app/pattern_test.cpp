#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

// small_plan with another pitch: from stop to stop 9.48 mm.
std::string with_pitch(const std::string& pitch) {
  std::string plan = small_plan();
  plan.replace(plan.find("0.53 mm"), 7, pitch);
  return plan;
}

}  // namespace

TEST_CASE("pattern tells a ribbon, and a plan that is set as it says has none") {
  const Workshop shop;
  shop.write("a.lay.toml", with_pitch("3.16 mm"));  // 18.96 / 3.16 = 6 turns
  const Ran text = shop.run("$LW pattern a.lay.toml");
  CHECK(text.code == 0);
  CHECK_THAT(text.out, Contains("exactly the whole number 6") && Contains("traverse.pitch"));
  const Json json = Json::parse(shop.run("$LW pattern a.lay.toml --json").out);
  CHECK(json.at("format") == "lay-pattern 1");
  const Json& row = json.at("rows").at(0);
  CHECK(row.at("verdict") == "ribbon");
  int pitches = 0;
  for (const Json& safe : row.at("safe_settings")) {
    if (safe.at("key") != "traverse.pitch") continue;
    ++pitches;
    shop.write("b.lay.toml", with_pitch(safe.at("value").dump() + " mm"));
    const Json again = Json::parse(shop.run("$LW pattern b.lay.toml --json").out).at("rows").at(0);
    CHECK(again.at("verdict") == "close pattern");
    CHECK(again.at("ahead_d") == safe.at("ahead_d"));
  }
  CHECK(pitches == 2);
  // 1 + gap fibers beside, as far as a thousandth of the pitch in 6 turns lets it.
  const Json wide = Json::parse(shop.run("$LW pattern a.lay.toml --gap 0.4 --json").out);
  for (const Json& safe : wide.at("rows").at(0).at("safe_settings"))
    CHECK(std::abs(safe.at("ahead_d").get<double>()) == Approx(1.4).margin(0.012));
}

TEST_CASE("pattern says plainly what it is not for, and refuses what makes no sense") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran close = shop.run("$LW pattern a.lay.toml");
  CHECK(close.code == 0);
  CHECK_THAT(close.out, Contains("close wind") && Contains("turn lies beside turn"));
  CHECK(shop.run("$LW pattern").code == 2);
  CHECK(shop.run("$LW pattern a.lay.toml --gap 0").code == 2);
  CHECK(shop.run("$LW pattern a.lay.toml --gap 0.6").code == 2);
  CHECK(shop.run("$LW pattern a.lay.toml --gap nan").code == 2);
  shop.write("b.lay.toml", with_pitch("-1 mm"));
  const Ran unsound = shop.run("$LW pattern b.lay.toml");
  CHECK(unsound.code == 1);
  CHECK(unsound.out.empty());
  CHECK_THAT(unsound.err, Contains("traverse.pitch"));
  CHECK_THAT(shop.run("$LW --help").out, Contains("pattern"));
}
