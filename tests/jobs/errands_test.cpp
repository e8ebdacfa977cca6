// Chores: all are done, in order, whatever becomes of one of them.
#include <memory>
#include <new>
#include <string>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>

#include "jobs/errands.h"
#include "jobs/flag.h"
#include "jobs/no_more_threads.h"

using namespace laywright;
using Catch::Matchers::Contains;

TEST_CASE("errands run in order, a newer one of a key replaces the waiting one, all run before the end") {
  std::vector<int> ran;
  {
    Errands errands;
    Flag go;
    ErrandQueue& queue = *errands.queue();
    queue.post("", [&] { go.wait(); });
    queue.post("a", [&] { ran.push_back(1); });
    queue.post("b", [&] { ran.push_back(2); });
    queue.post("a", [&] { ran.push_back(3); });
    queue.post("", [&] { ran.push_back(4); });
    queue.post("", [&] { ran.push_back(5); });
    CHECK(ran.empty());
    go.set();
  }
  CHECK(ran == std::vector<int>{3, 2, 4, 5});
}

TEST_CASE("an errand that fails is told of where somebody hears, and the next one runs") {
  std::vector<std::string> heard;
  bool ran = false;
  {
    Errands errands;
    const auto hears = [&](const Issue& trouble) { heard.push_back(trouble.what); };
    errands.queue()->post("", Task{"the settings", [] { throw std::bad_alloc(); }, hears});
    errands.queue()->post("", Task{"the settings", [] { throw 3; }, hears});
    errands.queue()->post("", [] { throw std::bad_alloc(); });  // nobody hears
    errands.queue()->post("", [&] { ran = true; });
  }
  REQUIRE(heard.size() == 2);
  CHECK_THAT(heard[0], Contains("not enough memory for the settings"));
  CHECK_THAT(heard[1], Contains("went wrong with the settings"));
  CHECK(ran);
}

TEST_CASE("after the end, errands run where they are posted") {
  std::shared_ptr<ErrandQueue> queue;
  {
    const Errands errands;
    queue = errands.queue();
  }
  std::thread::id by;
  queue->post("a", [&] { by = std::this_thread::get_id(); });
  CHECK(by == std::this_thread::get_id());
  std::string heard;
  queue->post("a", Task{"the settings", [] { throw 3; }, [&](const Issue& trouble) { heard = trouble.what; }});
  CHECK_THAT(heard, Contains("the settings"));
}

TEST_CASE("where no thread can be started, errands run where they are posted") {
  const NoMoreThreads none;
  const Errands errands;
  std::thread::id by;
  errands.queue()->post("", [&] { by = std::this_thread::get_id(); });
  CHECK(by == std::this_thread::get_id());
}

TEST_CASE("errands come from several threads, none is lost") {
  std::atomic<int> ran = 0;
  {
    Errands errands;
    std::vector<std::thread> posters;
    for (int i = 0; i < 4; ++i) {
      posters.emplace_back([&] {
        for (int k = 0; k < 50; ++k) errands.queue()->post("", [&] { ++ran; });
      });
    }
    for (std::thread& poster : posters) poster.join();
  }
  CHECK(ran == 200);
}
