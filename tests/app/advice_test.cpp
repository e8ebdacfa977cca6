#include <algorithm>
#include <filesystem>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

// small_plan with another value in it.
std::string changed(const std::string& from, const std::string& to, long turns = 60) {
  std::string plan = small_plan(turns);
  const std::size_t at = plan.find(from);
  REQUIRE(at != std::string::npos);
  return plan.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("cause names the setting that was made wrong") {
  const Workshop shop;
  shop.write("a.lay.toml", changed("right_stop = \"0.26 mm\"", "right_stop = \"2 mm\"", 120));
  const Json laid = Json::parse(shop.run("$LW lay a.lay.toml --json").out);
  const auto& findings = laid.at("findings");
  const auto gap = std::find_if(findings.begin(), findings.end(), [](const Json& f) {
    return f.at("kind") == "flange_gap" && f.at("side") == "right";
  });
  REQUIRE(gap != findings.end());
  const std::string number = std::to_string(gap - findings.begin() + 1);
  const Ran json = shop.run("$LW cause a.lay.toml --json --finding " + number);
  CHECK(json.code == 0);
  const Json cause = Json::parse(json.out);
  CHECK(cause.at("format") == "lay-cause 1");
  REQUIRE_FALSE(cause.at("remedies").empty());
  CHECK(cause.at("remedies")[0].at("set")[0].at("key") == "traverse.right_stop");
  const Ran text = shop.run("$LW cause a.lay.toml --finding " + number);
  CHECK_THAT(text.out, Contains("too far in") && Contains("Tried, one at a time"));

  const Ran none = shop.run("$LW cause a.lay.toml --finding 999");
  CHECK(none.code == 2);
  CHECK_THAT(none.err, Contains("no finding 999"));
}

TEST_CASE("improve writes a plan that is sound, with its comments, and better") {
  const Workshop shop;
  shop.write("a.lay.toml", changed("kind = \"instant\"", "kind = \"dwell\"  # as it came\nturns = 5", 240));
  const Ran ran = shop.run("$LW improve a.lay.toml --trials 40 -o b.lay.toml --json");
  REQUIRE(ran.code == 0);
  const Json found = Json::parse(ran.out);
  CHECK(found.at("format") == "lay-improve 1");
  REQUIRE_FALSE(found.at("proposals").empty());
  const auto pile_ups = [](const Json& proposal) {
    return proposal.at("outcome").at("pile_up_places").get<double>();
  };
  CHECK(pile_ups(found.at("as_it_is")) > 0.0);
  CHECK(pile_ups(found.at("proposals")[0]) == 0.0);
  // The verdict is the one that lay gives.
  CHECK(found.at("as_it_is").at("grade") == "do not wind");
  CHECK(found.at("proposals")[0].at("grade") ==
        Json::parse(shop.run("$LW lay b.lay.toml --json").out).at("verdict").at("grade"));
  CHECK_THAT(content(shop.at("b.lay.toml")), Contains("# as it came"));
  CHECK(shop.run("$LW check b.lay.toml").code == 0);
  // Laid, the plan that was written has the figures that were told.
  const Json laid = Json::parse(shop.run("$LW lay b.lay.toml --json").out);
  CHECK(laid.at("totals").at("outer_diameter").at("greatest") ==
        found.at("proposals")[0].at("outcome").at("outer_diameter_greatest_mm"));

  CHECK(shop.run("$LW improve a.lay.toml --range traverse.pich=1mm:2mm").code == 2);
  CHECK_THAT(shop.run("$LW improve a.lay.toml --range traverse.pich=1mm:2mm").err, Contains("traverse.pitch"));
  CHECK(shop.run("$LW improve a.lay.toml --weights 1:2").code == 2);
}

TEST_CASE("improve leaves a good plan as it is: it says so, writes nothing, and its exit code tells a script") {
  const Workshop shop;
  // Fiber of .25 mm on 12 mm between flanges, which is good on several draws (tests/advise).
  shop.write("good.lay.toml",
             "format = \"lay-plan 1\"\ntitle = \"good\"\n[spool]\nbarrel_diameter = \"150 mm\"\n"
             "flange_diameter = \"236 mm\"\ninside_width = \"12 mm\"\n[fiber]\ndiameter = \"0.25 mm\"\n"
             "friction = 0.5\n[traverse]\npitch = \"0.26 mm\"\nleft_stop = \"0.1 mm\"\nright_stop = \"0.1 mm\"\n"
             "free_length = \"40 mm\"\n[wind]\nturns = 460\n");
  const Ran told = shop.run("$LW improve good.lay.toml");
  CHECK(told.code == 0);
  CHECK_THAT(told.out, Contains("Leave the settings as they are"));
  const Ran ran = shop.run("$LW improve good.lay.toml -o better.lay.toml");
  CHECK(ran.code == 3);
  CHECK_THAT(ran.out, Contains("better.lay.toml was not written"));
  CHECK_FALSE(std::filesystem::exists(shop.at("better.lay.toml")));
  const Json json = Json::parse(shop.run("$LW improve good.lay.toml --json").out);
  CHECK(json.at("leave_it") == true);
  CHECK(json.at("proposals").empty());
}

TEST_CASE("capacity tells the model's figure beside the formulas, and what they leave out") {
  const Workshop shop;
  shop.write("a.lay.toml", changed("flange_diameter = \"400 mm\"", "flange_diameter = \"60 mm\""));
  const Ran text = shop.run("$LW capacity a.lay.toml");
  CHECK(text.code == 0);
  CHECK_THAT(text.out, Contains("By the model") && Contains("Leaves out"));
  const Json json = Json::parse(shop.run("$LW capacity a.lay.toml --json").out);
  CHECK(json.at("format") == "lay-capacity 1");
  // pi (A + D) A B / d^2 = pi * 55 * 5 * 10 / .25 mm.
  CHECK(json.at("formulas")[0].at("length_m").get<double>() == Approx(34.5575).epsilon(1e-4));
}

TEST_CASE("a study is written as tables and pictures, and shards of GNU parallel make the same whole") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const std::string study = "study a.lay.toml --vary traverse.pitch=0.5mm:0.6mm:4 --vary fiber.friction=0.3:0.7:3";
  const Ran whole = shop.run("$LW " + study + " --out whole");
  REQUIRE(whole.code == 0);
  CHECK_THAT(whole.out, Contains("Study of 12 builds") && Contains("outer diameter"));
  for (const char* name : {"study.csv", "study.json", "study.svg", "study.png"}) {
    CHECK(content(shop.at(std::string("whole/") + name)).size() > 200);
  }
  const std::string csv = content(shop.at("whole/study.csv"));
  CHECK(std::count(csv.begin(), csv.end(), '\n') == 13);

  REQUIRE(
      shop.run("parallel --will-cite -j2 $LW " + study + " --threads 1 --shard {}/3 --out shards ::: 1 2 3").code ==
      0);
  REQUIRE(shop.run("$LW study --merge shards/*.json --out merged").code == 0);
  for (const char* name : {"study.csv", "study.json", "study.svg", "study.png"}) {
    INFO(name);
    CHECK(content(shop.at(std::string("whole/") + name)) == content(shop.at(std::string("merged/") + name)));
  }
  const Ran part = shop.run("$LW study --merge shards/study-1-of-3.json shards/study-2-of-3.json --out partial");
  CHECK(part.code == 1);
  CHECK_THAT(part.err, Contains("missing"));
  CHECK_FALSE(std::filesystem::exists(shop.at("partial")));

  CHECK(shop.run("$LW study a.lay.toml").code == 2);
  CHECK(shop.run("$LW study a.lay.toml --vary traverse.pitch=0.5mm:0.6mm --shard 3/2").code == 2);
  CHECK(shop.run("$LW study --merge a.lay.toml").code == 1);
}

TEST_CASE("a study of tolerances tells spread, chance and what matters most") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran ran = shop.run(
      "$LW study a.lay.toml --tolerance fiber.diameter=0.01mm --tolerance traverse.left_stop=0.02mm:normal "
      "--samples 12");
  CHECK(ran.code == 0);
  CHECK_THAT(ran.out, Contains("5 %") && Contains("95 %") && Contains("Chance of a good wind") && Contains("Sobol"));
}

TEST_CASE("fit: from the template to the settings of the next spool") {
  const Workshop shop;
  shop.write("a.lay.toml", small_plan());
  const Ran empty = shop.run("$LW fit --template a.lay.toml --layers 3 > m.csv && $LW fit a.lay.toml m.csv");
  CHECK(empty.code == 1);
  CHECK_THAT(empty.err, Contains("m.csv") && Contains("no reading"));
  // As laid by a machine whose pitch is 3 % coarser: turns of its layers, from the program itself.
  shop.write("hidden.lay.toml", changed("pitch = \"0.53 mm\"", "pitch = \"0.546 mm\""));
  const Json laid = Json::parse(shop.run("$LW lay hidden.lay.toml --json").out);
  std::string table = "layer,layer_turns\n";
  for (int layer = 1; layer <= 3; ++layer) {
    const double turns = laid.at("layers")[static_cast<std::size_t>(layer - 1)].at("turns").get<double>();
    table += std::to_string(layer) + "," + std::to_string(turns) + "\n";
  }
  shop.write("m.csv", table);
  const Ran ran = shop.run(
      "$LW fit a.lay.toml m.csv --json --turns-error 0.3 --belief traverse.left_stop=0mm --belief "
      "traverse.right_stop=0mm "
      "--belief traverse.reversal.turns=0 --belief fiber.friction=0");
  REQUIRE(ran.code == 0);
  const Json fit = Json::parse(ran.out);
  CHECK(fit.at("format") == "lay-fit 1");
  CHECK(fit.at("fitted")[0].at("key") == "traverse.pitch");
  CHECK(fit.at("fitted")[0].at("value").get<double>() == Approx(0.546).epsilon(0.005));
  CHECK(fit.at("next_spool")[0].at("key") == "traverse.pitch");
  CHECK(shop.run("$LW fit a.lay.toml").code == 2);
}
