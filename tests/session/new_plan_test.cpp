// A plan begun anew in the window.
#include "bench_for_tests.h"
#include "session/new_plan_commands.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

NewRequest small_request() {
  NewRequest request;
  request.spool = "63 x 100 x 40 mm";
  request.fiber = "0.8 mm";
  request.length = "100 m";
  return request;
}

bool found(Workbench& bench) {
  return wait_until(bench, [&] { return !bench.beginning().status().busy; });
}

}  // namespace

TEST_CASE("what is wrong with what was said of a new plan is told by what was said, and nothing is searched for") {
  const TemporaryFolder folder;
  Workbench bench(options_in(folder));
  NewRequest request = small_request();
  request.spool = "20 x 40 mm";
  request.length.clear();
  CHECK_FALSE(bench.apply(cmd::propose_plan(request)));
  CHECK_FALSE(bench.beginning().status().busy);
  std::set<std::string> keys;
  for (const Issue& issue : bench.beginning().issues()) keys.insert(issue.key);
  CHECK(keys == std::set<std::string>{"spool", "length"});
  CHECK(bench.why_not(cmd::open_proposed()) == "There is no proposal: say spool, fiber and length first.");
}

TEST_CASE("what is proposed has been judged, opens without a file, and asks to be saved") {
  const TemporaryFolder folder;
  Workbench bench(options_in(folder));
  REQUIRE(bench.apply(cmd::ask(cmd::Question::new_plan)));
  REQUIRE(bench.apply(cmd::propose_plan(small_request())));
  REQUIRE(found(bench));
  CAPTURE(bench.beginning().status().trouble);
  REQUIRE(bench.beginning().proposed());
  const ProposedPlan proposed = *bench.beginning().proposed();
  CHECK(proposed.verdict.draws.size() == static_cast<std::size_t>(usual_draws));
  CHECK(proposed.request == small_request());

  REQUIRE(bench.apply(cmd::open_proposed()));
  CHECK_FALSE(bench.question());
  CHECK_FALSE(bench.beginning().proposed());
  REQUIRE(bench.active() != nullptr);
  const Document& document = *bench.active()->document;
  CHECK(document.path().empty());
  CHECK(document.dirty());
  CHECK(document.sound());
  CHECK(document.state().draft.traverse.pitch_mm == proposed.draft.traverse.pitch_mm);

  const std::filesystem::path file = folder.path() / "begun.lay.toml";
  REQUIRE(bench.apply(cmd::save_as(file.string())));
  CHECK(contents(file) == proposed.text);
  CHECK_FALSE(document.dirty());
}

TEST_CASE("a plan that is searched for is given up, and asking anew begins without it") {
  const TemporaryFolder folder;
  Workbench bench(options_in(folder));
  NewRequest request = small_request();
  request.spool = "150 x 236 x 95 mm";
  request.fiber = "0.25 mm";
  request.length = "25 km";
  REQUIRE(bench.apply(cmd::propose_plan(request)));
  CHECK(bench.beginning().status().busy);
  REQUIRE(bench.apply(cmd::stop_proposing()));
  CHECK(found(bench));
  CHECK(bench.beginning().status().stopped);
  CHECK_FALSE(bench.beginning().proposed());
  REQUIRE(bench.apply(cmd::ask(cmd::Question::new_plan)));
  CHECK_FALSE(bench.beginning().status().stopped);
}
