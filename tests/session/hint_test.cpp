// What the window says of a plan that cannot be laid.
#include "bench_for_tests.h"

using namespace laywright;
using namespace laywright::testing;

TEST_CASE("the hint over an unsound plan ends as sentences do, with a question's own end") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  std::string plan = small_plan;
  plan += "\n[limits]\npile_upp = 1.0\n";
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", plan))));
  CHECK_THAT(bench.hint(), Catch::Matchers::Contains("did you mean") && Catch::Matchers::EndsWith("?"));

  std::string other = small_plan;
  other.replace(other.find("1.02 mm"), 7, "-1.02 mm");
  REQUIRE(bench.apply(cmd::open(folder.file("b.lay.toml", other))));
  CHECK_THAT(bench.hint(), Catch::Matchers::EndsWith(".") && !Catch::Matchers::EndsWith(".."));
}
