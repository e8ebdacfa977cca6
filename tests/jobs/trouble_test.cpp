// What work throws, however it does: caught, and told in words that help.
#include <atomic>
#include <new>
#include <stdexcept>
#include <vector>

#include <catch2/catch.hpp>

#include "jobs/no_more_threads.h"
#include "jobs/thread.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

[[noreturn]] void too_much() { throw std::bad_alloc(); }
[[noreturn]] void flawed() { throw std::runtime_error("the printer is on fire"); }
[[noreturn]] void strange() { throw 7; }

void again(const std::optional<Trouble>& trouble) { std::rethrow_exception(trouble.value().cause); }

}  // namespace

TEST_CASE("work that goes well has no trouble") {
  bool done = false;
  CHECK_FALSE(attempt("the share page", [&] { done = true; }));
  CHECK(done);
}

TEST_CASE("what is thrown is told with what it hit and what helps, and can be thrown again") {
  const auto memory = attempt("the share page", too_much);
  REQUIRE(memory);
  CHECK(memory->issue.what ==
        "there is not enough memory for the share page: make the wind shorter, or close other programs");
  CHECK_THROWS_AS(again(memory), std::bad_alloc);
  const auto flaw = attempt("the share page", flawed);
  REQUIRE(flaw);
  CHECK_THAT(flaw->issue.what,
             Contains("the share page") && Contains("the printer is on fire") && Contains("try it again"));
  CHECK_THROWS_AS(again(flaw), std::runtime_error);
  const auto odd = attempt("the share page", strange);
  REQUIRE(odd);
  CHECK_THAT(odd->issue.what, Contains("the share page") && Contains("try it again"));
  CHECK_THROWS_AS(again(odd), int);
}

TEST_CASE("a trouble is a sentence, that of a key or a file begins with it") {
  const auto memory = attempt("this wind", too_much);
  CHECK(trouble_words({memory.value().issue}) ==
        "There is not enough memory for this wind: make the wind shorter, or close other programs.");
  Issue of_key;
  of_key.key = "traverse.pitch";
  of_key.value = "0 mm";
  of_key.what = "is out of range";
  of_key.allowed = "above 0";
  CHECK(trouble_words({of_key}) == "traverse.pitch 0 mm is out of range (allowed: above 0).");
  Issue of_file;
  of_file.file = "shop.db";
  of_file.what = "is damaged; go on with a backup of it";
  CHECK(trouble_words({of_file}) == "shop.db is damaged; go on with a backup of it.");
  CHECK(trouble_words({}).empty());
}

TEST_CASE("nothing escapes a thread, and the trouble is heard of on it") {
  std::vector<std::string> heard;
  for (const auto work : {too_much, flawed, strange}) {
    const auto thread =
        Thread::start({"the map", work, [&](const Issue& trouble) { heard.push_back(trouble.what); }});
    CHECK(thread);
  }
  REQUIRE(heard.size() == 3);
  CHECK_THAT(heard[0], Contains("not enough memory for the map"));
  CHECK_THAT(heard[1], Contains("the printer is on fire"));
  CHECK_THAT(heard[2], Contains("something went wrong with the map"));
}

TEST_CASE("not even what is thrown by who hears of it") {
  bool heard = false;
  carry_out({"the map", too_much, [&](const Issue&) {
               heard = true;
               strange();
             }});
  CHECK(heard);
  carry_out({"the map", strange, {}});  // nobody hears
}

TEST_CASE("where no thread can be started there is none, and the work is not begun") {
  const NoMoreThreads none;
  bool begun = false;
  CHECK_FALSE(Thread::start({"the map", [&] { begun = true; }, [&](const Issue&) { begun = true; }}));
  CHECK_FALSE(begun);
  CHECK_THAT(no_thread_for("the map").what, Contains("the map") && Contains("close other programs"));
}

TEST_CASE("a thread that another takes the place of is waited for") {
  std::atomic<int> ended = 0;
  std::optional<Thread> thread = Thread::start({"", [&] { ++ended; }, {}});
  thread = Thread::start({"", [] {}, {}});
  CHECK(ended == 1);
  CHECK(threads_at_hand() >= 1);
}
