// What a wind is made for: the texts of [order].
#include <string>

#include "plan/fields.h"
#include "plan/plan_values.h"
#include "plan/plan_writer.h"
#include "sample_plan.h"

using namespace laywright;

namespace {

std::string told_plan() {
  return sample::with("[spool]", R"([order]   # from the office
number = "4711"
customer = "A and B"
lot = "L-9"   # of the drum
spool = "3 of 4"

[spool])");
}

std::string saved_with(const PlanOrder& order) {
  const std::string told = told_plan();
  const PlanDraft before = sample::draft_of(told);
  PlanDraft after = before;
  after.order = order;
  return write_plan(told, before, after);
}

}  // namespace

TEST_CASE("a plan says for which order it is wound") {
  const std::string told = told_plan();
  const Result<Plan> plan = plan_from_text(told, "a.lay.toml");
  REQUIRE(plan.ok());
  CHECK(plan.value().order() == PlanOrder{"4711", "A and B", "L-9", "3 of 4"});
  CHECK(sample::draft_of(sample::full).order == PlanOrder{});
}

TEST_CASE("what is wrong in [order] is told with its place and what would do") {
  const std::string told = told_plan();
  const Issue number = sample::only_issue(sample::with("\"4711\"", "4711", told));
  CHECK(number.key == "order.number");
  CHECK(number.line == sample::line_of(told, "number = "));
  CHECK(number.value == "4711");
  CHECK(number.what == "must be text in quotes");

  const Issue unknown = sample::only_issue(sample::with("customer =", "custmer =", told));
  CHECK(unknown.key == "order.custmer");
  CHECK(unknown.what == "is not a key of a lay plan; did you mean customer?");
  CHECK(unknown.allowed == "number, customer, lot, spool");
  CHECK(sample::only_issue(sample::with("[order]", "[oder]", told)).what ==
        "is not a table of a lay plan; did you mean order?");
  CHECK(sample::only_issue(sample::with("lot = ", "pitch = ", told)).what ==
        "does not belong here; move it to [traverse]");
  CHECK(sample::only_issue("format = \"lay-plan 1\"\norder = 5\n" +
                           std::string(sample::full.substr(sample::full.find("[spool]"))))
            .key == "order");

  // In characters, not bytes.
  std::string longest;
  for (std::size_t i = 0; i < longest_order_text; ++i) longest += "\xc3\xa9";
  CHECK(plan_from_text(sample::with("A and B", longest, told), "").ok());
  const Issue too_long = sample::only_issue(sample::with("A and B", longest + "e", told));
  CHECK(too_long.key == "order.customer");
  CHECK(too_long.line == sample::line_of(told, "customer = "));
  CHECK(too_long.allowed == "up to 40 characters");
}

TEST_CASE("an order is saved in place, and leaves a file that it is taken out of") {
  const std::string told = told_plan();
  CHECK(saved_with({"4711", "A and B", "L-9", "3 of 4"}) == told);
  CHECK(saved_with({"4711", "A and B", "L-10", "3 of 4"}) == sample::with("L-9", "L-10", told));
  CHECK(saved_with({"4711", "", "L-9", "3 of 4"}) == sample::with("customer = \"A and B\"\n", "", told));
  const PlanDraft plain = sample::draft_of(sample::full);
  PlanDraft ordered = plain;
  ordered.order.number = "a \"b\"\\";
  const std::string text = write_plan(sample::full, plain, ordered);
  CHECK(text.find("# A plan for tests.") == 0);
  CHECK(same_plan(sample::draft_of(text), ordered));
  CHECK(same_plan(sample::draft_of(write_plan(ordered)), ordered));
  CHECK_FALSE(same_plan(plain, ordered));
}

TEST_CASE("an order stays when a value is taken out of the plan") {
  const std::string told = told_plan();
  PlanDraft draft = sample::draft_of(told);
  clear_value(draft, "spool.mass");
  CHECK(draft.order.number == "4711");
}
