#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

// Under a rim that stands low over the fiber.
std::string with_limit(const std::string& limit) {
  std::string plan = small_plan();
  plan.replace(plan.find("400 mm"), 6, "58 mm");
  return plan + "[limits]\npayoff_force = " + limit + "\n";
}

}  // namespace

TEST_CASE("payoff unwinds a plan, and its text and its document say the same") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran text = shop.run("$LW payoff a.lay.toml");
  CHECK(text.code == 0);
  CHECK_THAT(text.out, Contains("Drawn off from the side, nothing catches") && Contains("A running payoff"));
  const Ran json = shop.run("$LW payoff a.lay.toml --json");
  CHECK(json.code == 0);
  const Json whole = Json::parse(json.out);
  CHECK(whole.at("format") == "lay-payoff 1");
  const Json& payoff = whole.at("payoff");
  CHECK(payoff.at("drawn_off") == "side");
  CHECK(payoff.at("catches") == 0);
  CHECK(payoff.at("limit") == 1.5);
  // The block of lay --json is the same, and the verdict weighs its force.
  const Json laid = Json::parse(shop.run("$LW lay a.lay.toml --json").out);
  CHECK(laid.at("payoff") == payoff);
  const Json& check = laid.at("verdict").at("checks").back();
  CHECK(check.at("name") == "pull to draw it off");
  CHECK(check.at("value") == payoff.at("greatest_force"));
  CHECK(check.at("limit") == 1.5);
  CHECK(check.at("grade") == "good");
}

TEST_CASE("payoff over an end catches where the limit says so") {
  const Workshop shop;
  shop.write("a.lay.toml", with_limit("1.1"));
  const Json payoff = Json::parse(shop.run("$LW payoff a.lay.toml --over-end left --json").out).at("payoff");
  CHECK(payoff.at("drawn_off") == "over_left");
  CHECK(payoff.at("eye").is_null());
  CHECK(payoff.at("catches") > 0);
  CHECK(payoff.at("hardest_catches").at(0).at("force") == payoff.at("greatest_force"));
  CHECK(payoff.at("hardest_catches").at(0).at("held_by") == "drawn_over");
  int catches = 0;
  for (const Json& layer : payoff.at("layers")) catches += layer.at("catches").get<int>();
  CHECK(catches == payoff.at("catches"));
  CHECK_THAT(shop.run("$LW payoff a.lay.toml --over-end left").out, Contains("catches in") && Contains("outer end"));
  // Another limit, other catches.
  shop.write("b.lay.toml", with_limit("3"));
  CHECK(Json::parse(shop.run("$LW payoff b.lay.toml --over-end left --json").out).at("payoff").at("catches") == 0);
}

TEST_CASE("payoff takes the eye's distance, and refuses what makes no sense") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const auto greatest = [&](const std::string& eye) {
    return Json::parse(shop.run("$LW payoff a.lay.toml --json --eye '" + eye + "'").out)
        .at("payoff")
        .at("greatest_force")
        .get<double>();
  };
  CHECK(greatest("50 mm") > greatest("2 m"));
  CHECK(shop.run("$LW payoff").code == 2);
  CHECK(shop.run("$LW payoff a.lay.toml --over-end top").code == 2);
  CHECK(shop.run("$LW payoff a.lay.toml --eye 5").code == 2);
  CHECK(shop.run("$LW payoff a.lay.toml --eye '0 mm'").code == 2);
  CHECK(shop.run("$LW payoff a.lay.toml --eye '1 m' --over-end left").code == 2);
  shop.write("b.lay.toml", with_limit("1"));
  const Ran unsound = shop.run("$LW payoff b.lay.toml");
  CHECK(unsound.code == 1);
  CHECK(unsound.out.empty());
  CHECK_THAT(unsound.err, Contains("limits.payoff_force"));
  CHECK_THAT(shop.run("$LW --help").out, Contains("payoff"));
}
