// One thing that is made over and over: which results come, and what they are.
#include <memory>
#include <new>
#include <stdexcept>
#include <string>
#include <thread>

#include <catch2/catch.hpp>

#include "jobs/flag.h"
#include "jobs/latest_job.h"
#include "jobs/no_more_threads.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

using Job = LatestJob<int>;

// Until it is told to stop.
JobResult<int> until_stopped(Progress& progress) {
  while (!progress.cancelled()) std::this_thread::yield();
  return Stopped{};
}

Job::Work gives(int value) {
  return [value](Progress&) { return value; };
}

std::string trouble_of(const Job::Work& work) {
  Job job("the study");
  int woken = 0;
  job.ask(work, [&] { ++woken; });
  job.wait();
  CHECK(woken == 1);
  std::optional<JobResult<int>> ended = job.take();
  REQUIRE(ended);
  CHECK_FALSE(ended->done());
  CHECK_FALSE(ended->stopped());
  return trouble_words(ended->trouble());
}

}  // namespace

TEST_CASE("what is asked for comes once, and its caller is woken") {
  Job job("the study");
  CHECK_FALSE(job.busy());
  CHECK_FALSE(job.take());
  Flag woken;
  job.ask(gives(3), [&] { woken.set(); });
  CHECK(job.busy());
  woken.wait();
  CHECK(job.ready());
  std::optional<JobResult<int>> ended = job.take();
  REQUIRE((ended && ended->done()));
  CHECK(ended->value() == 3);
  CHECK_FALSE(job.busy());
  CHECK_FALSE(job.ready());
  CHECK_FALSE(job.take());
}

TEST_CASE("a newer question: the older one is told to stop, and what it comes to does not come") {
  Job job("the study");
  Flag begun;
  std::atomic<int> woken = 0;
  job.ask(
      [&](Progress& progress) {
        begun.set();
        (void)until_stopped(progress);
        return 1;
      },
      [&] { ++woken; });
  begun.wait();
  job.ask(gives(2), [&] { ++woken; });
  job.wait();
  std::optional<JobResult<int>> ended = job.take();
  REQUIRE((ended && ended->done()));
  CHECK(ended->value() == 2);
  CHECK(woken == 1);
}

TEST_CASE("where the older one is to be finished both come, but none that only waited") {
  Job job("the map");
  Flag begun, go, first;
  job.ask(
      [&](Progress& progress) {
        begun.set();
        go.wait();
        return progress.cancelled() ? -1 : 1;
      },
      [&] { first.set(); }, Older::finished);
  begun.wait();
  bool second = false;
  job.ask(
      [&](Progress&) {
        second = true;
        return 2;
      },
      [] {}, Older::finished);
  Flag take;
  job.ask(
      [&](Progress&) {
        take.wait();
        return 3;
      },
      [] {}, Older::finished);
  go.set();
  first.wait();
  CHECK(job.take().value().value() == 1);
  CHECK(job.busy());
  take.set();
  job.wait();
  CHECK(job.take().value().value() == 3);
  CHECK_FALSE(job.busy());
  CHECK_FALSE(second);
}

TEST_CASE("stopped: what runs is told, and nothing comes any more, not even what had ended") {
  Job job("the study");
  Flag begun, told;
  job.ask(
      [&](Progress& progress) {
        begun.set();
        (void)until_stopped(progress);
        told.set();
        return 1;
      },
      [] {});
  begun.wait();
  job.stop();
  CHECK_FALSE(job.busy());
  job.wait();
  CHECK(told.is_set());
  CHECK_FALSE(job.take());
  job.ask(gives(4), [] {});
  job.wait();
  CHECK(job.ready());
  job.stop();
  CHECK_FALSE(job.take());
}

TEST_CASE("asked to stop: what it comes to is still awaited") {
  Job job("the share page");
  Flag begun;
  job.ask(
      [&](Progress& progress) {
        progress.report(0.5);
        begun.set();
        return until_stopped(progress);
      },
      [] {});
  begun.wait();
  CHECK(job.share() == 0.5);
  job.ask_to_stop();
  CHECK(job.busy());
  job.wait();
  std::optional<JobResult<int>> ended = job.take();
  REQUIRE(ended);
  CHECK(ended->stopped());
  CHECK(job.share() == 0.0);
}

TEST_CASE("one that is asked to stop before it begins is not begun") {
  Job job("the share page");
  Flag go, begun;
  job.ask(
      [&](Progress&) {
        begun.set();
        go.wait();
        return 1;
      },
      [] {}, Older::finished);
  begun.wait();
  bool second = false;
  job.ask(
      [&](Progress&) {
        second = true;
        return 2;
      },
      [] {}, Older::finished);
  job.ask_to_stop();
  go.set();
  job.wait();
  CHECK(job.take().value().stopped());
  CHECK_FALSE(second);
}

TEST_CASE("whatever goes wrong is its trouble, in one way of saying") {
  CHECK_THAT(trouble_of([](Progress&) -> JobResult<int> { throw std::bad_alloc(); }),
             Contains("There is not enough memory for the study"));
  CHECK_THAT(trouble_of([](Progress&) -> JobResult<int> { throw std::runtime_error("the mill stands still"); }),
             Contains("Something went wrong with the study (the mill stands still)"));
  CHECK_THAT(trouble_of([](Progress&) -> JobResult<int> { throw 'c'; }),
             Contains("Something went wrong with the study"));
  Issue issue;
  issue.what = "there is nothing to study";
  CHECK(trouble_of([&](Progress&) { return JobResult<int>(issue); }) == "There is nothing to study.");
  CHECK(trouble_of([&](Progress&) { return Result<int>(issue); }) == "There is nothing to study.");
  const NoMoreThreads none;
  CHECK_THAT(trouble_of(gives(1)), Contains("no further thread for the study"));
}

TEST_CASE("after a trouble the next one comes") {
  Job job("the study");
  job.ask([](Progress&) -> JobResult<int> { throw 1; }, [] {});
  job.wait();
  CHECK_FALSE(job.take().value().done());
  job.ask(gives(5), [] {});
  job.wait();
  CHECK(job.take().value().value() == 5);
}

TEST_CASE("its end stops what runs and waits for it") {
  Flag begun, ended;
  {
    Job job("the study");
    job.ask(
        [&](Progress& progress) {
          begun.set();
          JobResult<int> result = until_stopped(progress);
          ended.set();
          return result;
        },
        [] {});
    begun.wait();
  }
  CHECK(ended.is_set());
}

TEST_CASE("a value that can only be moved is handed on") {
  LatestJob<std::unique_ptr<int>> job("the map");
  job.ask([](Progress&) { return std::make_unique<int>(6); }, [] {});
  job.wait();
  CHECK(*job.take().value().value() == 6);
}
