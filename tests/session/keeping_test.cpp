// What is kept for the next start, where it cannot be kept: the person is told once, and all else works.
#include "bench_for_tests.h"

#include <csignal>

#include <sys/resource.h>

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

// Far longer than it takes anywhere: only what never comes is waited for in vain.
constexpr double patience_s = 300.0;

// Each time ten seconds later still: whatever is written now and then is due again.
void poll_ever_later(Workbench& bench) {
  static int calls = 0;
  bench.poll(Workbench::Clock::now() + std::chrono::seconds(10 * ++calls));
}

bool is_told(const Workbench& bench, const std::string& words) {
  return std::any_of(bench.notices().begin(), bench.notices().end(),
                     [&](const Notice& n) { return n.text.find(words) != std::string::npos; });
}

bool await_notice(Workbench& bench, const std::string& words, double seconds) {
  const auto end = Workbench::Clock::now() + std::chrono::duration<double>(seconds);
  while (Workbench::Clock::now() < end) {
    poll_ever_later(bench);
    if (is_told(bench, words)) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  return false;
}

// While it lives, no file of this process may grow: each write fails, as on a full disk.
class FullDisk {
 public:
  FullDisk() : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit none{0, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &none);
  }
  ~FullDisk() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

 private:
  void (*handler_)(int);
  rlimit before_{};
};

}  // namespace

TEST_CASE("settings that cannot be kept: told once, where and why, and all else works") {
  TemporaryFolder folder;
  Workbench::Options options = options_in(folder);
  // A file stands where the folder should be: that binds the superuser, too.
  folder.file("config", "");
  Workbench bench(options);
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
  REQUIRE(await_notice(bench, "Settings are not kept", patience_s));
  CHECK_THAT(bench.notices().back().text, Contains((folder.path() / "config").string()));
  REQUIRE(bench.apply(cmd::dismiss_notice(bench.notices().size() - 1)));
  wait_for_build(bench);
  // Further settings, which are not kept either, are not told of again.
  bench.apply(cmd::open(folder.file("b.lay.toml", small_plan)));
  CHECK_FALSE(await_notice(bench, "Settings are not kept", 0.3));
  bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  CHECK(bench.apply(cmd::save()));
}

TEST_CASE("copies of unsaved work on a full disk: told, and kept as soon as there is room") {
  TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", small_plan);
  {
    Workbench bench(options_in(folder));
    REQUIRE(bench.apply(cmd::open(file)));
    {
      const FullDisk full;
      bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
      REQUIRE(await_notice(bench, "No copy of unsaved work is kept", patience_s));
      CHECK_FALSE(bench.apply(cmd::save()));
    }
    CHECK(contents(file) == small_plan);
  }
  // It had failed, and there was no further edit: the end of the program has tried again.
  Workbench bench(options_in(folder));
  REQUIRE(bench.recovery_offers().size() == 1);
  REQUIRE(bench.apply(cmd::recover(0)));
  CHECK(document(bench).state().draft.traverse.pitch_mm == 1.1);
}

TEST_CASE("no folder for copies of unsaved work: told at the first edit, not before") {
  TemporaryFolder folder;
  folder.file("state", "");
  Workbench bench(options_in(folder));
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
  CHECK_FALSE(await_notice(bench, "No copy", 0.1));
  bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  REQUIRE(await_notice(bench, "No copy of unsaved work is kept", patience_s));
  CHECK_THAT(bench.notices().back().text, Contains((folder.path() / "state").string()));
}

TEST_CASE("work is kept at once when it is asked for, not a second later") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  REQUIRE(bench.apply(cmd::open(folder.file("a.lay.toml", small_plan))));
  bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  bench.keep_unsaved();
  // Without poll(): only the disk is waited for.
  CHECK(await_copies(folder, 1));
}
