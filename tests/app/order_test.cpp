// laywright order, as a person runs it.
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/program.h"
#include "order/reel_plan.h"

using namespace laywright;
using Catch::Matchers::Contains;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string head = "format = \"lay-order 1\"\nnumber = \"7\"\ncustomer = \"A and B\"\nlot = \"L\"\n";

struct OrderShop : Workshop {
  OrderShop() {
    fs::create_directory(at("plans"));
    write("plans/reel.lay.toml", testing::reel);
    write("a.order.toml", head +
                              "plan = \"plans/reel.lay.toml\"\n[[piece]]\nlength = \"200 m\"\ncount = 2\n"
                              "[[piece]]\nlength = \"90 m\"\n[delivery]\nleader = \"5 m\"\n");
  }
};

}  // namespace

TEST_CASE("order tells which spool takes what, from any folder, as text and as one document") {
  const OrderShop shop;
  const Ran text = shop.run("$LW order a.order.toml");
  CHECK(text.code == 0);
  CHECK(text.err.empty());
  CHECK_THAT(text.out, Contains("Order 7, A and B, lot L") && Contains("490 m in 3 pieces over 2 spools") &&
                           Contains("the fewest that do") && Contains("total"));
  const Ran elsewhere = shop.run("cd plans && $LW order ../a.order.toml --json");
  CHECK(elsewhere.code == 0);
  const json document = json::parse(elsewhere.out);
  CHECK(document.at("format") == "lay-batch 1");
  CHECK(document.at("totals").at("net_m") == 490.0);
  CHECK(document.at("totals").at("gross_m") == 500.0);
}

TEST_CASE("the plan of each spool lays to the figures of the order, and its sheet says which spool it is") {
  const OrderShop shop;
  const Ran ran = shop.run("$LW order a.order.toml --json --out out");
  REQUIRE(ran.code == 0);
  const json document = json::parse(ran.out);
  REQUIRE(document.at("spools").size() == 2);
  for (const json& spool : document.at("spools")) {
    const std::string name = "out/" + spool.at("name").get<std::string>();
    const json laid = json::parse(shop.run("$LW lay --json " + name + ".lay.toml").out);
    CAPTURE(name);
    CHECK(laid.at("totals").at("turns") == spool.at("turns"));
    CHECK(laid.at("totals").at("stations_per_turn") == spool.at("stations_per_turn"));
    CHECK(laid.at("totals").at("outer_diameter").at("greatest") == spool.at("outer_diameter"));
    CHECK(laid.at("totals").at("rim_clearance") == spool.at("rim_clearance"));
    CHECK(laid.at("totals").at("mass_kg") == spool.at("fiber_mass_kg"));
    CHECK(laid.at("takeup").at("time_s") == spool.at("time_s"));
    CHECK(laid.at("verdict").at("line") == spool.at("verdict").at("line"));
    CHECK(laid.at("plan").at("revision") == spool.at("revision"));
    CHECK(laid.at("plan").at("order").at("number") == "7");
    const std::string which = laid.at("plan").at("order").at("spool");
    CHECK_THAT(shop.run("pdftotext -layout " + name + ".pdf - | tr -s ' '").out,
               Contains("Order no. 7 Customer A and B Spool no. " + which) &&
                   Contains("plan " + spool.at("revision").get<std::string>()));
  }
  CHECK(content(shop.at("out/batch.pdf")).starts_with("%PDF-"));
  CHECK(content(shop.at("out/spool-1.lay.toml")) != content(shop.at("out/spool-2.lay.toml")));
}

TEST_CASE("the batch is written as table and on paper, by the ending of the name") {
  const OrderShop shop;
  const Ran csv = shop.run(
      "$LW order a.order.toml -o a.csv && $LW order a.order.toml -o a.pdf && $LW order a.order.toml --out out");
  CHECK(csv.code == 0);
  CHECK(content(shop.at("a.csv")) == content(shop.at("out/batch.csv")));
  CHECK(content(shop.at("a.pdf")) == content(shop.at("out/batch.pdf")));
  CHECK_THAT(shop.run("pdftotext a.pdf -").out, Contains("Order 7, A and B, lot L"));
}

TEST_CASE("an order that is not sound, or cannot be delivered, is 1 and says what to do") {
  const OrderShop shop;
  shop.write("wrong.order.toml", head + "plan = \"plans/reel.lay.toml\"\n[[piece]]\nlength = 20\n");
  shop.write("long.order.toml", head + "plan = \"plans/reel.lay.toml\"\n[[piece]]\nlength = \"5 km\"\n");
  shop.write("bad.lay.toml", "format = \"lay-plan 1\"\n");
  shop.write("bad.order.toml", head + "plan = \"bad.lay.toml\"\n[[piece]]\nlength = \"1 m\"\n");
  struct Wrong {
    const char *order, *says;
  };
  for (const Wrong& wrong :
       {Wrong{"wrong.order.toml", "wrong.order.toml:7: error: piece[0].length"},
        Wrong{"long.order.toml", "allow splices"}, Wrong{"bad.order.toml", "bad.order.toml:5: error: plan"},
        Wrong{"nowhere.order.toml", "nowhere.order.toml"}}) {
    CAPTURE(wrong.order);
    const Ran ran = shop.run(std::string("$LW order --out out ") + wrong.order);
    CHECK(ran.code == 1);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains(wrong.says));
  }
  CHECK_THAT(shop.run("$LW order bad.order.toml").err, Contains("bad.lay.toml: error: spool"));
  CHECK_FALSE(fs::exists(shop.at("out")));
}

TEST_CASE("an order's wrong command line is 2, and no plan of it is lost") {
  const OrderShop shop;
  CHECK(shop.run("$LW order").code == 2);
  CHECK(shop.run("$LW order a.order.toml -o a.png").code == 2);
  CHECK(shop.run("$LW order a.order.toml -o a.csv --out out").code == 2);
  shop.write("plans/spool-1.lay.toml", testing::reel);
  shop.write("own.order.toml", head + "plan = \"plans/spool-1.lay.toml\"\n[[piece]]\nlength = \"20 m\"\n");
  const Ran lost = shop.run("$LW order own.order.toml --out plans");
  CHECK(lost.code == 2);
  CHECK_THAT(lost.err, Contains("plans/spool-1.lay.toml") && Contains("would be lost"));
  CHECK(content(shop.at("plans/spool-1.lay.toml")) == testing::reel);
  CHECK_FALSE(fs::exists(shop.at("plans/batch.csv")));
}

TEST_CASE("an order that is stopped writes nothing") {
  const OrderShop shop;
  shop.write("plans/long.lay.toml", small_plan(200'000));
  shop.write("long.order.toml", head + "plan = \"plans/long.lay.toml\"\n[[piece]]\nlength = \"20 m\"\n");
  const Ran stopped = shop.stopped("order long.order.toml --out out", "INT", 0.3);
  CHECK(stopped.code == 130);
  CHECK(stopped.out.empty());
  CHECK_THAT(stopped.err, Contains("nothing was written"));
  CHECK_FALSE(fs::exists(shop.at("out")));
}
