#include <string>

#include <catch2/catch.hpp>

#include "figures/new_plan.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

PlanDraft a_draft() {
  PlanDraft draft;
  draft.title = "Wire \"A\"";
  draft.spool.barrel_diameter_mm = 50.8;
  draft.spool.flange_diameter_mm = 100.0;
  draft.spool.inside_width_mm = 40.0;
  draft.origins["spool.barrel_diameter"] = {0, "2 in"};
  draft.fiber.diameter_mm = 0.5;
  draft.fiber.friction = 0.5;
  draft.traverse.pitch_mm = 0.52;
  draft.traverse.left_stop_mm = 0.14;
  draft.traverse.right_stop_mm = 0.15;
  draft.traverse.free_length_mm = 50.0;
  draft.wind.length_mm = 20'000.0;
  return draft;
}

NewPlanNotes notes() {
  NewPlanNotes made;
  made.verdict.reason = "every figure keeps its limit";
  made.assumed = {"fiber.friction"};
  return made;
}

void check_same(const std::string& text, const PlanDraft& draft) {
  INFO(text);
  const EntriesOf entries(draft);
  const Result<PlanDraft> read = read_plan(text, "", &entries);
  for (const Issue& issue : read.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(read.ok());
  CHECK(same_plan(read.value(), draft));
}

}  // namespace

TEST_CASE("the text of a new plan reads back as its draft") {
  PlanDraft draft = a_draft();
  check_same(new_plan_text(draft, notes()), draft);
  draft.notes = "two\nlines";
  draft.traverse.reversal = {ReversalKind::dwell, 0.5, 0.01, 0.0};
  draft.traverse.start = Side::right;
  draft.fiber.friction = Fiber::held;
  draft.wind.tension_N = 0.5;
  draft.wind.steps = {{4, 0.53, std::nullopt, 0.1}};
  draft.takeup.emplace().full_current_A = 0.25;
  draft.limits.gap_d = 0.25;
  check_same(new_plan_text(draft, notes()), draft);
}

TEST_CASE("a new plan says of its values what they are and what is a guess") {
  const std::string text = new_plan_text(a_draft(), notes());
  CHECK_THAT(text, Contains("# The settings of the traverse were laid and judged") &&
                       Contains("Good (this draw): every figure\n# keeps its limit.\n"));
  CHECK_THAT(text, Contains("barrel_diameter = \"2 in\"\n") &&
                       Contains("friction = 0.5                  # of the fiber on itself; a guess: measure it\n") &&
                       Contains("free_length = \"50 mm\"           # of fiber between the guide and the spool\n"));
}

TEST_CASE("what an entry says is told beside its name, and only what differs is written") {
  PlanDraft draft = a_draft();
  draft.entries.push_back(
      {EntryKind::spool,
       "Reel",
       "/somewhere/shop.toml",
       4,
       {{"spool.barrel_diameter", {50.8, "2 in", 5}}, {"spool.inside_width", {42.0, "42 mm", 6}}}});
  draft.entries.push_back(
      {EntryKind::machine, "W2", "shop.toml", 9, {{"traverse.free_length", {50.0, "50 mm", 10}}}});
  const std::string text = new_plan_text(draft, notes());
  CHECK_THAT(text, Contains("[spool]\n# of shop.toml: barrel_diameter 2 in, inside_width 42 mm\nname = \"Reel\"\n"
                            "flange_diameter = \"100 mm\"\ninside_width = \"40 mm\""));
  CHECK_THAT(
      text, Contains("[machine]\n# of shop.toml: free_length 50 mm\nname = \"W2\"\n") && !Contains("free_length ="));
  check_same(text, draft);
}
