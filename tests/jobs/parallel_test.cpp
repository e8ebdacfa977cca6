#include <atomic>
#include <chrono>
#include <new>
#include <stdexcept>
#include <system_error>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>

#include "jobs/no_more_threads.h"
#include "jobs/parallel.h"

using namespace laywright;

TEST_CASE("every task runs once, on any number of threads") {
  for (const int threads : {1, 2, 7}) {
    Progress progress;
    std::vector<int> runs(100, 0);
    run_parallel(runs.size(), threads, progress, [&](std::size_t i, Progress&) { ++runs[i]; });
    CHECK(runs == std::vector<int>(100, 1));
    CHECK(progress.share() == 1.0);
  }
}

TEST_CASE("cancelling reaches the tasks that run and leaves out the others") {
  Progress progress;
  std::atomic<int> begun = 0;
  run_parallel(1000, 2, progress, [&](std::size_t, Progress& inner) {
    ++begun;
    progress.cancel();
    while (!inner.cancelled()) std::this_thread::yield();
  });
  CHECK(begun <= 2);
}

TEST_CASE("a task that fails ends the others, and its exception comes out") {
  Progress progress;
  std::atomic<int> begun = 0;
  const auto run = [&] {
    run_parallel(1000, 2, progress, [&](std::size_t, Progress& inner) {
      if (++begun == 1) throw std::bad_alloc();
      while (!inner.cancelled()) std::this_thread::yield();
    });
  };
  CHECK_THROWS_AS(run(), std::bad_alloc);
  CHECK(begun <= 3);
}

TEST_CASE("where no thread can be started the caller does the tasks itself, and can still be stopped") {
  const NoMoreThreads none;
  REQUIRE_THROWS_AS(std::thread([] {}), std::system_error);
  Progress progress;
  std::vector<std::thread::id> by(20);
  std::vector<double> shares;
  run_parallel(by.size(), 4, progress, [&](std::size_t i, Progress& inner) {
    by[i] = std::this_thread::get_id();
    inner.report(0.5);
    shares.push_back(progress.share());
  });
  CHECK(by == std::vector<std::thread::id>(20, std::this_thread::get_id()));
  for (std::size_t i = 0; i < shares.size(); ++i) CHECK(shares[i] == Approx((static_cast<double>(i) + 0.5) / 20.0));
  CHECK(progress.share() == 1.0);

  std::size_t begun = 0;
  run_parallel(20, 4, progress, [&](std::size_t, Progress& inner) {
    ++begun;
    progress.cancel();
    inner.report(0.5);
    CHECK(inner.cancelled());
  });
  CHECK(begun == 1);
  CHECK_THROWS_AS(([&] {
                    Progress other;
                    run_parallel(20, 4, other, [](std::size_t, Progress&) { throw std::bad_alloc(); });
                  }()),
                  std::bad_alloc);
}

TEST_CASE("whatever a task throws comes out as it is") {
  const auto throws = [](auto thrown) {
    Progress progress;
    run_parallel(20, 4, progress, [&](std::size_t i, Progress&) {
      if (i == 3) throw thrown;
    });
  };
  CHECK_THROWS_AS(throws(std::bad_alloc()), std::bad_alloc);
  CHECK_THROWS_AS(throws(std::length_error("too long")), std::length_error);
  CHECK_THROWS_AS(throws(7), int);
}

TEST_CASE("results stand in the order of the tasks, whichever ends first") {
  Progress progress;
  std::vector<std::size_t> squares(40, 0);
  run_parallel(squares.size(), 4, progress, [&](std::size_t i, Progress&) {
    if (i % 4 == 0) std::this_thread::sleep_for(std::chrono::milliseconds(2));
    squares[i] = i * i;
  });
  for (std::size_t i = 0; i < squares.size(); ++i) CHECK(squares[i] == i * i);
}

TEST_CASE("a stretch moves its progress within its ends only") {
  Progress progress;
  run_parallel(10, 2, {progress, 0.25, 0.5}, [](std::size_t, Progress&) {});
  CHECK(progress.share() == Approx(0.5));
}
