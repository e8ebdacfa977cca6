#include <atomic>
#include <new>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>

#include "advise/parallel.h"

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

TEST_CASE("a stretch moves its progress within its ends only") {
  Progress progress;
  run_parallel(10, 2, {progress, 0.25, 0.5}, [](std::size_t, Progress&) {});
  CHECK(progress.share() == Approx(0.5));
}
