// The fiber's colour: a word, or one that is mixed.
#include "plan/mixed_colour.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"
#include "sample_plan.h"

using namespace laywright;

namespace {

std::string with_colour(const std::string& value) {
  std::string text(sample::full);
  const std::string is = "colour = \"blue\"";
  return text.replace(text.find(is), is.size(), "colour = " + value);
}

}  // namespace

TEST_CASE("a colour of the screen is read from its six digits, in small and large letters") {
  CHECK(mix_of(*mixed_colour("#000000")) == 0x000000U);
  CHECK(mix_of(*mixed_colour("#c0392b")) == 0xC0392BU);
  CHECK(mix_of(*mixed_colour("#FFFFFF")) == 0xFFFFFFU);
  CHECK(mixed_text(*mixed_colour("#0A0b0C")) == "#0a0b0c");
  for (const char* none :
       {"", "#", "c0392b", "#c0392", "#c0392b0", "#c0392g", "#-12345", "#+12345", " #c0392b", "# c0392", "blue"})
    CHECK_FALSE(mixed_colour(none));
  CHECK_FALSE(mix_of(FiberColour::natural));
  CHECK_FALSE(mix_of(FiberColour::violet));
}

TEST_CASE("a plan with a mixed colour is sound, and says it again when it is saved") {
  const Result<Plan> plan = plan_from_text(with_colour("\"#c0392b\""), "a.lay.toml");
  REQUIRE(plan.ok());
  CHECK(mix_of(plan.value().fiber().colour) == 0xC0392BU);
  const Result<Plan> again = plan_from_text(write_plan(plan.value().draft()), "a.lay.toml");
  REQUIRE(again.ok());
  CHECK(again.value().fiber().colour == plan.value().fiber().colour);
  PlanDraft draft = plan.value().draft();
  draft.fiber.colour = *mixed_colour("#102030");
  CHECK(write_plan(draft).find("colour = \"#102030\"") != std::string::npos);
}

TEST_CASE("a wrong colour is told with its place, and what to write") {
  for (const std::string wrong : {"\"#12345\"", "\"#12345g\"", "\"#\""}) {
    CAPTURE(wrong);
    const Result<Plan> plan = plan_from_text(with_colour(wrong), "a.lay.toml");
    REQUIRE_FALSE(plan.ok());
    REQUIRE(plan.issues().size() == 1);
    const Issue& issue = plan.issues().front();
    CHECK(issue.key == "fiber.colour");
    CHECK(issue.line > 0);
    CHECK(issue.value == wrong);
    CHECK(issue.what.find("six digits") != std::string::npos);
    CHECK(issue.allowed.find("violet") != std::string::npos);
    CHECK(issue.allowed.find("#c0392b") != std::string::npos);
  }
  const Result<Plan> word = plan_from_text(with_colour("\"blu\""), "a.lay.toml");
  REQUIRE_FALSE(word.ok());
  CHECK(word.issues().front().what.find("did you mean \"blue\"") != std::string::npos);
}
