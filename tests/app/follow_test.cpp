// A wind that is followed on the command line: on plan, off plan, the checklist, tables from spreadsheets.
#include <string>

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

constexpr const char* right_stop = "right_stop = \"0.26 mm\"";

// small_plan, with the right stop there.
std::string with_right_stop(const std::string& value) {
  std::string plan = small_plan(200);
  const std::size_t at = plan.find(right_stop);
  REQUIRE(at != std::string::npos);
  return plan.replace(at, std::string(right_stop).size(), "right_stop = \"" + value + "\"");
}

std::string with_comma(double value) {
  std::string text = fmt::format("{:.2f}", value);
  text[text.find('.')] = ',';
  return text;
}

// What is read on a spool of that plan after its first layers, as a spreadsheet saves it.
std::string read_off(const Workshop& shop, const std::string& plan) {
  shop.write("hidden.lay.toml", plan);
  const Json laid = Json::parse(shop.run("$LW lay hidden.lay.toml --json").out);
  std::string table = "\xEF\xBB\xBFLayer;Turns;Left (mm);Right (mm)\r\n";
  for (const Json& each : laid.at("takeup").at("checkpoints")) {
    if (each.at("layer").get<int>() > 5) break;
    const Json& diameter = each.at("outer_diameter");
    table +=
        fmt::format("{};{};{};{}\r\n", each.at("layer").get<int>(), with_comma(each.at("turns").get<double>()),
                    with_comma(diameter.at("left").get<double>()), with_comma(diameter.at("right").get<double>()));
  }
  return table;
}

}  // namespace

TEST_CASE("follow: a wind on plan, and one whose right stop turns early") {
  const Workshop shop;
  shop.write("a.lay.toml", with_right_stop("0.26 mm"));
  shop.write("even.csv", read_off(shop, with_right_stop("0.26 mm")));
  const Ran even = shop.run("$LW follow a.lay.toml even.csv --fidelity 0.5");
  CHECK(even.code == 0);
  CHECK_THAT(even.out, Contains("On plan") && Contains("Nothing is to be changed."));

  shop.write("off.csv", read_off(shop, with_right_stop("0.9 mm")));
  const Ran off = shop.run("$LW follow a.lay.toml off.csv --json --fidelity 0.5");
  REQUIRE(off.code == 0);
  const Json told = Json::parse(off.out);
  CHECK(told.at("format") == "lay-follow 1");
  CHECK(told.at("on_plan") == false);
  CHECK(told.at("found").at("fitted")[0].at("key") == "traverse.right_stop");
  REQUIRE_FALSE(told.at("now").empty());
  CHECK(told.at("now")[0].at("key") == "traverse.right_stop");
  CHECK(told.at("now")[0].at("to").get<double>() == Approx(0.26 - 0.64).margin(0.15));
  CHECK_FALSE(told.at("changed").is_null());
  const Ran text = shop.run("$LW follow a.lay.toml off.csv --fidelity 0.5");
  CHECK_THAT(text.out, Contains(told.at("now")[0].at("text").get<std::string>().substr(0, 19)) &&
                           Contains("Before reaching in") && Contains("With the change from here on"));
}

TEST_CASE("follow: the checklist, and what is no table") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan(60));
  const Ran list = shop.run("$LW follow a.lay.toml --checklist --fidelity 0.5");
  CHECK(list.code == 0);
  CHECK_THAT(list.out, Contains("When layer 2 has ended") && Contains("At the end of the wind") &&
                           Contains("diameter middle") && Contains("more or less"));
  const Json rows = Json::parse(shop.run("$LW follow a.lay.toml --checklist --json --fidelity 0.5").out);
  CHECK(rows.at("format") == "lay-checklist 1");
  CHECK(rows.at("checkpoints").size() == 3);  // layers 1 and 2, and the end in the fourth

  const Ran none = shop.run("$LW follow a.lay.toml");
  CHECK(none.code == 2);
  CHECK_THAT(none.err, Contains("READINGS"));
  shop.write("unclear.csv", "layer;turns\n1;1,234\n");
  const Ran unclear = shop.run("$LW follow a.lay.toml unclear.csv");
  CHECK(unclear.code == 1);
  CHECK_THAT(unclear.err, Contains("unclear.csv:2") && Contains("column 2 (turns)"));
}
