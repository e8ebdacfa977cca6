// One task at a time, always the newest.
#include <new>
#include <string>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>

#include "jobs/flag.h"
#include "jobs/latest.h"
#include "jobs/no_more_threads.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

Task plain(std::function<void()> work) { return {"a test", std::move(work), {}}; }

}  // namespace

TEST_CASE("of tasks that wait, only the newest runs") {
  std::vector<int> ran;
  Flag begun, go;
  Latest latest;
  latest.run(plain([&] {
    begun.set();
    go.wait();
    ran.push_back(1);
  }));
  begun.wait();
  for (const int i : {2, 3, 4}) latest.run(plain([&ran, i] { ran.push_back(i); }));
  go.set();
  latest.wait();
  CHECK(ran == std::vector<int>{1, 4});
}

TEST_CASE("the end waits for the task that runs and drops the one that waits") {
  Flag begun, ended;
  bool second = false;
  {
    Latest latest;
    latest.run(plain([&] {
      begun.set();
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
      ended.set();
    }));
    begun.wait();
    latest.run(plain([&] { second = true; }));
  }
  CHECK(ended.is_set());
  CHECK_FALSE(second);
}

TEST_CASE("a task that throws is told of, and the next one runs") {
  std::vector<std::string> heard;
  bool next = false;
  Latest latest;
  const auto hears = [&](const Issue& trouble) { heard.push_back(trouble.what); };
  latest.run({"the section", [] { throw std::bad_alloc(); }, hears});
  latest.wait();
  latest.run({"the section", [] { throw "a word"; }, hears});
  latest.wait();
  latest.run(plain([&] { next = true; }));
  latest.wait();
  REQUIRE(heard.size() == 2);
  CHECK_THAT(heard[0], Contains("not enough memory for the section"));
  CHECK_THAT(heard[1], Contains("went wrong with the section"));
  CHECK(next);
}

TEST_CASE("where no thread can be started that is the task's trouble, and the next one tries again") {
  std::vector<std::string> heard;
  bool ran = false;
  const Task task{"the section", [&] { ran = true; }, [&](const Issue& trouble) { heard.push_back(trouble.what); }};
  Latest latest;
  {
    const NoMoreThreads none;
    latest.run(task);
    latest.wait();  // for nothing
  }
  CHECK_FALSE(ran);
  REQUIRE(heard.size() == 1);
  CHECK_THAT(heard[0], Contains("no further thread for the section"));
  latest.run(task);
  latest.wait();
  CHECK(ran);
  CHECK(heard.size() == 1);
}

TEST_CASE("what a task holds is let go when it is over, not when the next one comes") {
  const auto held = std::make_shared<int>(1);
  Latest latest;
  latest.run(plain([held] { (void)held; }));
  latest.wait();
  CHECK(held.use_count() == 1);
}
