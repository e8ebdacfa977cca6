// Keys while something is typed into a field of the plan.
#include "ui/keys.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "session/bench_for_tests.h"
#include "session/command_rows.h"
#include "ui/headless.h"

using namespace laywright;

namespace {

std::vector<std::string> names_after(const std::string& keys, const Workbench& bench) {
  testing::Headless ui(800.0F, 600.0F);
  ui.frames({0.0F, 0.0F}, {400.0F, 400.0F}, [] {});
  TypingState& typing = ui.state.typing;
  typing.path = "traverse.pitch";
  typing.text = "1.05 mm";
  typing.sent = "1.02 mm";
  typing.desk = bench.active()->id;
  take_input({{keys}, {}, false}, bench, ui.state, ui.out);
  std::vector<std::string> names;
  for (const Command& command : ui.out) names.push_back(command.name());
  return names;
}

}  // namespace

TEST_CASE("what is typed goes into the plan before a command that needs it, the share page's, too") {
  const testing::LaidBench laid(testing::small_plan);
  int keys_with_plan = 0;
  for (const CommandRow& row : command_rows()) {
    if (row.also != Also::while_typing || row.group == "Help") continue;
    CAPTURE(std::string(row.keys));
    const std::vector<std::string> names = names_after(std::string(row.keys), laid.bench);
    REQUIRE(names.size() == 2);
    CHECK_THAT(names[0], Catch::Matchers::Contains("traverse.pitch"));
    CHECK(names[1] == row.command.name());
    ++keys_with_plan;
  }
  CHECK(keys_with_plan >= 5);
  CHECK(row_of_keys("Ctrl+E")->also == Also::while_typing);
  // Help is read while a number is half typed.
  CHECK(names_after("F1", laid.bench).size() == 1);
}
