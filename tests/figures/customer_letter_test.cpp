#include "figures/customer_letter.h"

#include <catch2/catch.hpp>

#include "model/wound.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

const char* const secretive = R"(# a comment of the shop
format = "lay-plan 1"
title = "Our title"
notes = "between us"
[order]
number = "4711"
customer = "Rowan Mills"
[spool]
barrel_diameter = "50 mm"   # from the second shelf
flange_diameter = "80 mm"
inside_width = "10 mm"
[fiber]
diameter = "0.5 mm"
friction = 0.5
[traverse]
motion = "continuous"
pitch = "0.53 mm"
left_stop = "0.26 mm"
right_stop = "0.26 mm"
start = "left"
free_length = "50 mm"
[traverse.reversal]
kind = "instant"
[wind]
turns = 60
)";

Plan plan_of(const std::string& text) {
  const Result<Plan> plan = plan_from_text(text, "a.lay.toml");
  REQUIRE(plan.ok());
  return plan.value();
}

CustomerLetter letter() {
  CustomerLetter made;
  made.title = "Your spool";
  made.sender = "Corder & Sons";
  made.date = "29 November";
  return made;
}

}  // namespace

TEST_CASE("a plan goes to a customer without notes, comments and order, and lays the same wind") {
  const Plan plan = plan_of(secretive);
  const std::string text = customer_plan_text(secretive, plan, letter());
  for (const char* kept :
       {"comment of the shop", "second shelf", "between us", "4711", "Rowan", "Our title", "[order]"}) {
    CAPTURE(kept);
    CHECK(text.find(kept) == std::string::npos);
  }
  const Plan sent = plan_of(text);
  CHECK(sent.title() == "Your spool");
  CHECK(wound(sent).build.hash() == wound(plan).build.hash());
}

TEST_CASE("notes and comments of a plan go to a customer where the letter says so") {
  CustomerLetter open = letter();
  open.notes = true;
  const std::string text = customer_plan_text(secretive, plan_of(secretive), open);
  CHECK_THAT(text,
             Contains("second shelf") && Contains("between us") && Contains("Your spool") && !Contains("Our title"));
}

TEST_CASE("what a letter leaves empty comes from the plan, and it stands in one line") {
  const CustomerLetter filled = addressed({}, plan_of(secretive));
  CHECK(filled.title == "Our title");
  CHECK(filled.customer == "Rowan Mills");
  CHECK(address_line(filled) == "For Rowan Mills");
  CustomerLetter own = letter();
  own.customer = "Two\nlines\x1b";
  CHECK(address_line(addressed(own, plan_of(secretive))) == "For Two lines\\x1b, from Corder & Sons, 29 November");
  CustomerLetter dated;
  dated.date = "29 November";
  CHECK(address_line(dated) == "29 November");
  CHECK(address_line({}).empty());
}

TEST_CASE("a letter that one page has no room for is refused, and it is told which part of it") {
  CHECK(check_letter(letter()).empty());
  CustomerLetter full = letter();
  full.title = std::string(longest_title, 'x');
  full.greeting = std::string(longest_greeting, 'x');
  full.customer = std::string(longest_name_text, 'x');
  CHECK(check_letter(full).empty());
  full.greeting += 'x';
  full.customer += 'x';
  const Issues issues = check_letter(full);
  REQUIRE(issues.size() == 2);
  CHECK(issues[0].key == "customer");
  CHECK(issues[0].allowed == "up to 60 characters");
  CHECK(issues[1].key == "greeting");
  CHECK_THAT(issues[1].what, Contains("601 characters"));
}
