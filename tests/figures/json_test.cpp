#include <limits>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "figures/hand_wound.h"
#include "figures/json.h"
#include "verdict/verdict_words.h"

using namespace laywright;
using nlohmann::json;

TEST_CASE("the document holds the values, by the keys of lay-build 1") {
  const Build build = hand_build();
  const json document = json::parse(to_json(hand_plan(), build, hand_measurements(), TakeupRun()));
  CHECK(document.at("format") == "lay-build 1");
  CHECK(document.at("plan").at("title") == "Hand wound");
  CHECK(document.at("plan").at("file") == "hand.lay.toml");

  const json& totals = document.at("totals");
  CHECK(totals.at("turns") == 18.0);
  CHECK(totals.at("length_m").get<double>() == Approx(build.length_mm / 1e3).epsilon(1e-15));
  CHECK(totals.at("layers") == 2);
  CHECK(totals.at("stations_per_turn") == 8);
  CHECK(totals.at("outer_diameter") == json{{"left", 24.125},
                                            {"middle", 24.25},
                                            {"right", 24.375},
                                            {"greatest", 24.5},
                                            {"greatest_at", {{"x", 0.5}, {"angle", 45.0}}}});
  CHECK(totals.at("unfinished_layer") ==
        json{{"layer", 2},
             {"turns", 9.0},
             {"end_x", 0.75},
             {"outer_diameter", {{"left", 24.625}, {"middle", 24.75}, {"right", 24.875}}}});
  CHECK(totals.at("edges") ==
        json{{"left", {{"ridge", 0.5}, {"valley", 0.125}}}, {"right", {{"ridge", 0.25}, {"valley", 0.0625}}}});
  CHECK(totals.at("fill_factor") == 0.78125);
  CHECK(totals.at("rim_clearance") == 7.75);
  CHECK(totals.at("mass_kg") == 0.0625);
  CHECK(totals.at("wind_time_s").is_null());
  CHECK(totals.at("stopped_by") == "turns");
  CHECK(totals.at("seed") == 7);

  const json& layers = document.at("layers");
  REQUIRE(layers.size() == 2);
  CHECK(layers[0].at("direction") == "right");
  CHECK(layers[0].at("mean_rise_d").is_null());
  CHECK(layers[0].at("gap_length_m") == 0.0125);
  CHECK(layers[1].at("layer") == 2);
  CHECK(layers[1].at("direction") == "left");
  CHECK(layers[1].at("turns") == 9.0);
  CHECK(layers[1].at("length_m") == 0.650375);
  CHECK(layers[1].at("mean_diameter") == 23.0);
  CHECK(layers[1].at("mean_rise_d") == 1.0);
  CHECK(layers[1].at("bridged_share") == 0.125);
}

TEST_CASE("findings keep their place, and a flange where they belong to one") {
  const json findings =
      json::parse(to_json(hand_plan(), hand_build(), hand_measurements(), TakeupRun())).at("findings");
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].at("kind") == "flange_gap");
  CHECK(findings[0].at("layer") == 1);
  CHECK(findings[0].at("turn") == 8.5);
  CHECK(findings[0].at("side") == "right");
  CHECK(findings[0].at("x") == json{9.25, 10.0});
  CHECK(findings[0].at("angle") == json{45.0, 270.0});
  CHECK(findings[0].at("length_m") == json{0.56, 1.244});
  CHECK(findings[0].at("size") == 0.75);
  CHECK(findings[0].at("size_d") == 0.75);
  CHECK(findings[0].at("severity") == "worth a look");
  CHECK(findings[0].at("places") == json::array());
  CHECK(findings[0].at("text") == hand_measurements().findings[0].text);
  CHECK(findings[1].at("kind") == "rim_overrun");
  CHECK(findings[1].at("side").is_null());
}

TEST_CASE("a finding has the places where it is largest") {
  Measurements m = hand_measurements();
  m.findings[0].severity = FindingSeverity::grave;
  m.findings[0].places = {{0, 4, 2, 0.75}, {8, 12, 9, 0.5}};
  const json finding = json::parse(to_json(hand_plan(), hand_build(), m, TakeupRun())).at("findings")[0];
  CHECK(finding.at("severity") == "grave");
  const json& places = finding.at("places");
  REQUIRE(places.size() == 2);
  // Eight stations to a turn; from .5 mm on, 1 mm a turn.
  CHECK(places[0].at("turn") == 0.25);
  CHECK(places[0].at("angle") == 90.0);
  CHECK(places[0].at("x").get<double>() == Approx(0.75).margin(1e-6));
  CHECK(places[0].at("size") == 0.75);
  CHECK(places[1].at("turn") == 1.125);
  CHECK(places[1].at("angle") == 45.0);
}

TEST_CASE("the verdict stands with every figure that was weighed") {
  Measurements m = hand_measurements();
  m.findings.clear();
  m.edges->front().ridge_mm = 1.5;
  const Build build = hand_build();
  const WindVerdict verdict = verdict_of(hand_plan(), build, m, nullptr);
  const json block = json::parse(to_json(hand_plan(), build, m, TakeupRun())).at("verdict");
  CHECK(block.at("grade") == "do not wind");
  CHECK(block.at("line") == verdict_line(verdict));
  CHECK(block.at("reason") == verdict.reason);
  CHECK(block.at("first") == *verdict.first);
  REQUIRE(block.at("checks").size() == verdict.checks.size());
  const json& ridge = block.at("checks")[1];
  CHECK(ridge.at("name") == "ridge, left flange");
  CHECK(ridge.at("value") == 1.5);
  CHECK(ridge.at("limit") == 1.0);
  CHECK(ridge.at("margin") == -0.5);
  CHECK(ridge.at("grade") == "do not wind");
  CHECK(ridge.at("unit") == "d");
  CHECK(ridge.at("at_least") == false);
}

TEST_CASE("a wind without findings has an empty list, not none") {
  Measurements m;
  const json document = json::parse(to_json(hand_plan(), hand_build(), m, TakeupRun()));
  CHECK(document.at("findings") == json::array());
  CHECK(document.at("layers") == json::array());
}

TEST_CASE("what is not finite is null, and what is not UTF-8 does not break the document") {
  Measurements m = hand_measurements();
  m.fill_factor = std::numeric_limits<double>::quiet_NaN();
  m.wind_time_s = std::numeric_limits<double>::infinity();
  m.findings[0].text = "a stray byte \xff here";
  const json document = json::parse(to_json(hand_plan(), hand_build(), m, TakeupRun()));
  CHECK(document.at("totals").at("fill_factor").is_null());
  CHECK(document.at("totals").at("wind_time_s").is_null());
  CHECK(document.at("findings")[0].at("text") == "a stray byte \xef\xbf\xbd here");
}
