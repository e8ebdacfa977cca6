#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

constexpr const char* shop_spools = R"(format = "lay-catalogue 1"
[[spool]]
name = "Reel 9"
source = "measured"
barrel_diameter = "50 mm"
flange_diameter = "400 mm"
inside_width = "10 mm"
)";

// small_plan with its spool named.
std::string named_plan() {
  std::string plan = small_plan();
  const std::size_t from = plan.find("barrel_diameter"), to = plan.find("[fiber]");
  return plan.replace(from, to - from, "name = \"Reel 9\"\n");
}

class Shop : public Workshop {
 public:
  Shop() {
    std::filesystem::create_directories(at("config/laywright/catalogue"));
    std::filesystem::create_directories(at("shared"));
    write("a.lay.toml", named_plan());
  }
  // A person whose own folders are here, and no other catalogue is named.
  [[nodiscard]] Ran as_person(const std::string& command) const {
    return run("unset LAYWRIGHT_CATALOGUE; export XDG_CONFIG_HOME=\"$PWD/config\"; " + command);
  }
};

}  // namespace

TEST_CASE("all commands read a plan that names an entry of the person's own catalogue") {
  const Shop shop;
  shop.write("config/laywright/catalogue/spools.toml", shop_spools);
  shop.write("b.lay.toml", small_plan());
  const Ran named = shop.as_person("$LW lay a.lay.toml --json"), whole = shop.as_person("$LW lay b.lay.toml --json");
  CHECK(named.err.empty());
  REQUIRE(named.code == 0);
  CHECK(nlohmann::json::parse(named.out).at("totals") == nlohmann::json::parse(whole.out).at("totals"));
  for (const char* command : {"pattern", "payoff", "capacity", "sheet -o s.svg", "picture --size 64x64 -o p.png",
                              "export csv -o l.csv", "study --vary traverse.pitch=0.52mm:0.54mm:2"}) {
    INFO(command);
    const std::string text(command);
    const std::size_t space = std::min(text.find(' '), text.size());
    const bool is_export = text.rfind("export", 0) == 0;
    const Ran ran = shop.as_person(is_export ? "$LW export a.lay.toml -o l.csv"
                                             : "$LW " + text.substr(0, space) + " a.lay.toml" + text.substr(space));
    INFO(ran.err);
    CHECK(ran.code == 0);
  }
}

TEST_CASE("what is kept of a plan in a document stands alone") {
  const Shop shop;
  shop.write("config/laywright/catalogue/spools.toml", shop_spools);
  const Ran study = shop.as_person("$LW study a.lay.toml --vary traverse.pitch=0.52mm:0.54mm:2 --json");
  REQUIRE(study.code == 0);
  const std::string text = nlohmann::json::parse(study.out).at("plan").at("text");
  CHECK_THAT(text, Contains("barrel_diameter = \"50 mm\"") && !Contains("Reel 9"));
}

TEST_CASE("check tells where an entry stands, and what the plan overrides") {
  const Shop shop;
  shop.write("config/laywright/catalogue/spools.toml", shop_spools);
  const Ran checked = shop.as_person("$LW check a.lay.toml");
  CHECK(checked.code == 0);
  CHECK(checked.out == "a.lay.toml: sound\n  spool \"Reel 9\" from " +
                           shop.at("config/laywright/catalogue/spools.toml").string() + ":2\n");
  std::string narrower = named_plan();
  narrower.insert(narrower.find("[fiber]"), "inside_width = \"9 mm\"\n");
  shop.write("a.lay.toml", narrower);
  CHECK_THAT(shop.as_person("$LW check a.lay.toml").out, Contains(":2; the plan's own: spool.inside_width\n"));
}

TEST_CASE("a flattened plan is sound where there is no catalogue") {
  const Shop shop;
  shop.write("config/laywright/catalogue/spools.toml", shop_spools);
  const Ran flat = shop.as_person("$LW check --flatten a.lay.toml > alone.lay.toml");
  CHECK(flat.code == 0);
  CHECK_THAT(content(shop.at("alone.lay.toml")),
             Contains("barrel_diameter = \"50 mm\"") && Contains("# Reel 9 of the catalogue spools.toml, line 2"));
  std::filesystem::remove(shop.at("config/laywright/catalogue/spools.toml"));
  CHECK(shop.as_person("$LW check alone.lay.toml").out == "alone.lay.toml: sound\n");
  const Ran lost = shop.as_person("$LW check a.lay.toml");
  CHECK(lost.code == 1);
  CHECK_THAT(lost.err, Contains("a.lay.toml:4: error: spool.name = \"Reel 9\": is in no catalogue of spools"));
  CHECK(shop.as_person("$LW check --flatten a.lay.toml").code == 1);
  CHECK(shop.as_person("$LW check --flatten alone.lay.toml alone.lay.toml").code == 2);
}

TEST_CASE("a flattened plan keeps every byte of what it does not change") {
  const Shop shop;
  shop.write("b.lay.toml", "# a tab:\t.\r\n" + small_plan());
  CHECK(shop.as_person("$LW check --flatten b.lay.toml > c.lay.toml").code == 0);
  CHECK(content(shop.at("c.lay.toml")) == content(shop.at("b.lay.toml")));
}

TEST_CASE("a shared folder by option or environment counts before one's own") {
  const Shop shop;
  shop.write("config/laywright/catalogue/spools.toml", shop_spools);
  std::string other = shop_spools;
  other.replace(other.find("10 mm"), 5, "12 mm");
  shop.write("shared/ours.toml", other);
  for (const char* command : {"$LW check a.lay.toml --catalogue shared", "$LW --catalogue shared check a.lay.toml",
                              "LAYWRIGHT_CATALOGUE=shared $LW check a.lay.toml"}) {
    INFO(command);
    const Ran ran = shop.as_person(command);
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("from shared/ours.toml:2"));
  }
  const Ran absent = shop.as_person("$LW check a.lay.toml --catalogue nowhere");
  CHECK(absent.code == 0);  // its own has it
  const Ran lost = shop.as_person("rm config/laywright/catalogue/*; $LW check a.lay.toml --catalogue nowhere");
  CHECK(lost.code == 1);
  CHECK_THAT(lost.err, Contains("nowhere: error: there is no such folder of catalogues"));
}

TEST_CASE("an unknown name offers the nearest, of what comes with the program, too") {
  const Shop shop;
  std::string plan = named_plan();
  plan.replace(plan.find("Reel 9"), 6, "IEC 60264 10O");
  shop.write("a.lay.toml", plan);
  CHECK_THAT(shop.as_person("$LW check a.lay.toml").err, Contains("did you mean \"IEC 60264 100\"?"));
}

TEST_CASE("new --list tells every entry with its source and file") {
  const Shop shop;
  shop.write("config/laywright/catalogue/spools.toml", shop_spools);
  const Ran list = shop.as_person("$LW new --list");
  CHECK(list.code == 0);
  CHECK_THAT(list.out, Contains("Reel 9") && Contains("measured") &&
                           Contains("catalogue/spools.toml:\n    Reel 9 ") && Contains("ITU-T G.652") &&
                           Contains("AWG 30") && Contains("machines\n") && Contains("    Bench winder "));
}
