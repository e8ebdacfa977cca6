// What the person is told, and how long.
#include <algorithm>

#include "session/bench_for_tests.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

bool told(const Workbench& bench, const std::string& words) {
  return std::any_of(bench.notices().begin(), bench.notices().end(),
                     [&](const Notice& notice) { return notice.text.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("a refusal is told as long as it holds, and no longer") {
  LaidBench laid(small_plan);
  Workbench& bench = laid.bench;
  CHECK_FALSE(bench.apply(cmd::peel_one(1)));
  REQUIRE(told(bench, "All layers are shown"));
  bench.poll();
  CHECK(told(bench, "All layers are shown"));
  CHECK(bench.apply(cmd::peel_one(-1)));
  CHECK_FALSE(told(bench, "All layers are shown"));

  CHECK_FALSE(bench.apply(cmd::ask(cmd::Question::what_to_compare)));
  REQUIRE(told(bench, "There is no other plan"));
  CHECK(bench.apply(cmd::pin_build()));
  CHECK_FALSE(told(bench, "There is no other plan"));
  CHECK_FALSE(bench.apply(cmd::ask(cmd::Question::what_to_compare)));
  CHECK(told(bench, "compared already"));
}

TEST_CASE("a refusal goes with what happens in the background, too") {
  LaidBench laid(small_plan);
  Workbench& bench = laid.bench;
  CHECK_FALSE(bench.apply(cmd::stop_laying()));
  REQUIRE(told(bench, "Nothing is being laid"));
  CHECK(bench.apply(cmd::lay_again()));
  CHECK(wait_until(bench, [&] { return !told(bench, "Nothing is being laid"); }));
}

TEST_CASE("what is no refusal stays until it has been read") {
  LaidBench laid(small_plan);
  laid.bench.tell(Severity::warning, "The disk is nearly full.");
  CHECK(laid.bench.apply(cmd::peel_one(-1)));
  laid.bench.poll();
  CHECK(told(laid.bench, "The disk is nearly full."));
}
