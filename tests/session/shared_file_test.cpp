// One plan in several hands: two windows, other programs, a file that goes. Nobody's work is lost unasked.
#include "bench_for_tests.h"

#include <random>

#include "plan/plan_file.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

constexpr const char* mine = "1.1 mm";
constexpr const char* theirs = "1.05 mm";

std::string with_pitch(const char* pitch) {
  std::string text = small_plan;
  const std::string was = "1.02 mm";
  return text.replace(text.find(was), was.size(), pitch);
}

}  // namespace

TEST_CASE("two windows on one plan: the second to save is told, and both keep copies of their own") {
  TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", small_plan);
  {
    Workbench one(options_in(folder)), other(options_in(folder));
    REQUIRE(one.apply(cmd::open(file)));
    REQUIRE(other.apply(cmd::open(file)));
    one.apply(cmd::type_field("traverse.pitch", theirs));
    other.apply(cmd::type_field("traverse.pitch", mine));
    poll_later(one);
    poll_later(other);
    REQUIRE(wait_until(one, [&] { return copies_in(folder) == 2; }));

    REQUIRE(one.apply(cmd::save()));
    CHECK_FALSE(other.apply(cmd::save()));
    REQUIRE_FALSE(other.notices().empty());
    CHECK_THAT(other.notices().back().issues.front().what, Contains("changed by somebody else"));
    CHECK(load_plan(file).value().traverse().pitch_mm == 1.05);
    CHECK(document(other).dirty());
    // What the first has saved is no unsaved work any more; the other's copy is its own.
    poll_later(one);
    REQUIRE(wait_until(one, [&] { return copies_in(folder) == 1; }));

    // The other replaces it, knowingly; then it is the first that is told.
    REQUIRE(wait_until(other, [&] { return document(other).on_disk() == OnDisk::changed; }));
    REQUIRE(other.apply(cmd::keep_mine()));
    REQUIRE(other.apply(cmd::save()));
    CHECK(load_plan(file).value().traverse().pitch_mm == 1.1);
    one.apply(cmd::type_field("traverse.pitch", "1.07 mm"));
    CHECK_FALSE(one.apply(cmd::save()));
    CHECK(load_plan(file).value().traverse().pitch_mm == 1.1);
  }
  Workbench next(options_in(folder));
  REQUIRE(next.recovery_offers().size() == 1);
  CHECK_THAT(next.recovery_offers().front().work.text, Contains("1.07 mm"));
}

TEST_CASE("recovered work does not replace what others have saved since") {
  TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", small_plan);
  {
    Workbench bench(options_in(folder));
    bench.apply(cmd::open(file));
    bench.apply(cmd::type_field("traverse.pitch", mine));
  }
  folder.file("a.lay.toml", with_pitch(theirs));
  Workbench bench(options_in(folder));
  REQUIRE(bench.apply(cmd::recover(0)));
  CHECK_FALSE(bench.apply(cmd::save()));
  CHECK(contents(file) == with_pitch(theirs));
  REQUIRE(wait_until(bench, [&] { return document(bench).on_disk() == OnDisk::changed; }));
  SECTION("theirs can be seen, and mine is one undo away") {
    REQUIRE(bench.apply(cmd::revert()));
    CHECK(document(bench).state().draft.traverse.pitch_mm == 1.05);
    bench.apply(cmd::undo());
    CHECK(document(bench).state().draft.traverse.pitch_mm == 1.1);
  }
  SECTION("mine can be kept") {
    REQUIRE(bench.apply(cmd::keep_mine()));
    REQUIRE(bench.apply(cmd::save()));
    CHECK(load_plan(file).value().traverse().pitch_mm == 1.1);
  }
}

TEST_CASE("a plan whose file is gone is unsaved work, edited or not") {
  TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", small_plan);
  {
    Workbench bench(options_in(folder));
    REQUIRE(bench.apply(cmd::open(file)));
    CHECK_FALSE(bench.any_unsaved());
    std::filesystem::remove(file);
    REQUIRE(wait_until(bench, [&] { return document(bench).on_disk() == OnDisk::gone; }));
    CHECK(bench.any_unsaved());
    bench.apply(cmd::close(false));
    CHECK(bench.question() == cmd::Question::close_unsaved);
    bench.apply(cmd::answered());
  }
  Workbench bench(options_in(folder));
  REQUIRE(bench.recovery_offers().size() == 1);
  REQUIRE(bench.apply(cmd::recover(0)));
  REQUIRE(bench.apply(cmd::save()));
  CHECK(contents(file) == small_plan);
  CHECK_FALSE(bench.any_unsaved());
}

TEST_CASE("a change that comes while the plan is being opened is not taken for what was opened") {
  TemporaryFolder folder;
  // Long, so that reading it takes a moment.
  std::string before = small_plan;
  before.insert(before.find("[spool]"), "notes = \"" + std::string(40'000, 'n') + "\"\n");
  std::string after = before;
  after.replace(after.find("1.02 mm"), 7, "1.05 mm");
  std::mt19937 random(11);
  int came_between = 0;
  // Until it has come between, too: later and later, on machines that are slow to open a file.
  for (unsigned i = 0; i < 25 || came_between == 0; ++i) {
    const std::string file = folder.file("a.lay.toml", before), theirs_file = folder.file("b.lay.toml", after);
    Workbench bench(options_in(folder));
    std::thread writer([&, wait = std::chrono::microseconds(random() % (3000U + 100U * i))] {
      std::this_thread::sleep_for(wait);
      std::filesystem::rename(theirs_file, file);
    });
    bench.apply(cmd::open(file));
    writer.join();
    REQUIRE(bench.active() != nullptr);
    if (document(bench).state().draft.traverse.pitch_mm == 1.05) continue;  // it came first
    ++came_between;
    bench.apply(cmd::type_field("traverse.pitch", mine));
    CHECK_FALSE(bench.apply(cmd::save()));
    CHECK(contents(file) == after);
  }
}
