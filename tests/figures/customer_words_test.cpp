// What a customer reads. The figures are round ones, set by hand.
#include "figures/customer_words.h"

#include <catch2/catch.hpp>

#include "plan/plan_file.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

std::string plan_text(const std::string& fiber, const std::string& wind = "length = \"1.04 km\"",
                      const std::string& flange = "100 mm", const std::string& rest = "") {
  return "format = \"lay-plan 1\"\n[spool]\nbarrel_diameter = \"" +
         std::string(flange.ends_with("in") ? "2.5 in" : "63 mm") + "\"\nflange_diameter = \"" + flange +
         "\"\ninside_width = \"80 mm\"\n[fiber]\n" + fiber +
         "\nfriction = 0.5\n[traverse]\nmotion = \"continuous\"\npitch = \"0.235 mm\"\nleft_stop = \"0.12 mm\"\n"
         "right_stop = \"0.12 mm\"\nstart = \"left\"\nfree_length = \"40 mm\"\n[traverse.reversal]\nkind = "
         "\"instant\"\n"
         "[wind]\n" +
         wind + "\n" + rest;
}

Plan customer_plan(const std::string& text) {
  const Result<Plan> plan = plan_from_text(text, "a.lay.toml");
  for (const Issue& issue : plan.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

const std::string copper = "diameter = \"0.22 mm\"\nlook = \"copper\"";

CustomerFigures round_figures() {
  CustomerFigures figures;
  figures.capacity = {7.5e6, 7.271e6, 7.729e6};
  figures.diameter = {69.5, 69.42, 69.58};
  figures.wound = {1.04e6, 69.5, 15.25};
  figures.model_margin = 0.03;
  return figures;
}

}  // namespace

TEST_CASE("a customer is told how much the spool holds, and how thick it is with what is wound") {
  const CustomerSummary told = customer_summary(customer_plan(plan_text(copper)), round_figures());
  CHECK(told.holds == "Your spool holds 7.5 km of copper wire.");
  CHECK(told.wound == "With 1.04 km it is 69.5 mm thick, 15.3 mm below the rim.");
  // Rounded outward: what is promised is within.
  CHECK_THAT(told.sure, Contains("3 % of the length") && Contains("holds 7.27 to 7.73 km") &&
                            Contains("69.4 to 69.6 mm thick") && Contains("No tolerance was stated") &&
                            Contains("not measured"));
  CHECK(told.rows.front() == std::pair<std::string, std::string>("The spool holds", "7.5 km (7.27 to 7.73 km)"));
}

TEST_CASE("a tolerance and a scatter that are counted are told") {
  CustomerFigures figures = round_figures();
  figures.tolerance_mm = 0.006;
  figures.scatters = true;
  const Plan plan = customer_plan(plan_text(copper + "\ndiameter_tolerance = \"0.006 mm\""));
  CHECK_THAT(customer_summary(plan, figures).sure, Contains("the tolerance of the wire, 0.006 mm either way") &&
                                                       Contains("scatter") && !Contains("No tolerance"));
}

TEST_CASE("what is wound is called what it is, or by its owner's word") {
  const auto full = [](const std::string& fiber) { return full_ware_of(customer_plan(plan_text(fiber))); };
  CHECK(full(copper) == "copper wire");
  CHECK(full("diameter = \"0.22 mm\"\nlook = \"enamelled\"") == "enamelled wire");
  CHECK(full("diameter = \"0.22 mm\"\nlook = \"steel\"") == "steel wire");
  CHECK(full("diameter = \"0.22 mm\"\nlook = \"glass\"") == "bare glass fiber");
  CHECK(full("diameter = \"0.22 mm\"\nlook = \"yarn\"") == "yarn");
  CHECK(full("diameter = \"0.22 mm\"") == "coated fiber");
  CHECK(full("diameter = \"1 mm\"\nlook = \"coated\"") == "cable");
  const Plan plan = customer_plan(plan_text(copper));
  CHECK(full_ware_of(plan, "bell wire") == "bell wire");
  CHECK_THAT(customer_summary(plan, round_figures(), "bell wire").holds, Contains("7.5 km of bell wire."));
  CHECK(ware_of(plan, "a\nb") == "a\\x0ab");
}

TEST_CASE("lengths and diameters stand in the plan's units") {
  const Plan plan = customer_plan(plan_text(copper, "length = \"3412 ft\"", "3.937 in"));
  const CustomerSummary told = customer_summary(plan, round_figures());
  // 7.5 km / 0.3048 m = 24,606 ft, in three digits; 1.04 km = 3,412.07 ft; 69.5 mm = 2.736 in.
  CHECK(told.holds == "Your spool holds 24,600 ft of copper wire.");
  CHECK(told.wound == "With 3,412 ft it is 2.736 in thick, 0.6 in below the rim.");
  CHECK_THAT(told.sure, Contains("23,800 to 25,400 ft"));
}

TEST_CASE("a length that was asked for in yards is told in yards, on a spool in millimetres") {
  const Plan plan = customer_plan(plan_text(copper, "length = \"1137 yd\""));
  const CustomerSummary told = customer_summary(plan, round_figures());
  // 7.5 km / 0.9144 m = 8,202 yd, in three digits; 1.04 km = 1,137.4 yd.
  CHECK(told.holds == "Your spool holds 8,200 yd of copper wire.");
  CHECK(told.wound == "With 1,137 yd it is 69.5 mm thick, 15.3 mm below the rim.");
}

TEST_CASE("a spool that is full, overfull or too small says so") {
  const Plan plan =
      customer_plan(plan_text(copper, "length = \"9 km\"", "100 mm", "[limits]\nrim_clearance = \"3 mm\"\n"));
  CHECK(wound_sentence(plan, {7.6e6, 100.0, 0.0}) ==
        "With 7.6 km it is 100 mm thick, level with the rim. The 9 km asked for do not fit.");
  CHECK(wound_sentence(plan, {9e6, 101.0, -0.5}) == "With 9 km it is 101 mm thick, 0.5 mm above the rim.");
  CHECK_THAT(customer_summary(plan, round_figures()).holds,
             Contains("7.5 km of copper wire, up to 3 mm below the rim."));
}
