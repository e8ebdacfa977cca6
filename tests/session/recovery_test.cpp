// Unsaved work survives whatever ends the program.
#include "bench_for_tests.h"

#include <sys/wait.h>
#include <unistd.h>

#include "failing_folders.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

// The file of which there is some.
std::string end_with_unsaved_work(const TemporaryFolder& folder) {
  const std::string file = folder.file("a.lay.toml", small_plan);
  {
    Workbench bench(options_in(folder));
    bench.apply(cmd::open(file));
    bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  }
  return file;
}

}  // namespace

TEST_CASE("a program that is killed offers its unsaved work at the next start") {
  TemporaryFolder folder;
  const std::string file = folder.file("a.lay.toml", small_plan);
  const pid_t child = ::fork();
  if (child == 0) {
    // No destructor runs in here.
    Workbench bench(options_in(folder));
    bench.apply(cmd::open(file));
    bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
    bench.apply(cmd::set_notes("a\n\"\"\"quoted\"\"\" note"));
    poll_later(bench);
    ::_exit(await_copies(folder, 1) ? 0 : 1);
  }
  int status = 1;
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(status == 0);

  Workbench bench(options_in(folder));
  bench.start({file});
  REQUIRE(bench.recovery_offers().size() == 1);
  CHECK(bench.recovery_offers().front().work.file == file);
  REQUIRE(bench.apply(cmd::recover(0)));
  CHECK(bench.recovery_offers().empty());
  CHECK(document(bench).dirty());
  CHECK(document(bench).state().draft.traverse.pitch_mm == 1.1);
  CHECK(document(bench).state().draft.notes == "a\n\"\"\"quoted\"\"\" note");
  // It is an edit of the file as it was: comments survive a save, and undo leads back.
  bench.apply(cmd::set_notes(""));
  REQUIRE(bench.apply(cmd::save()));
  CHECK(contents(file).find("# a guess") != std::string::npos);
  CHECK(contents(file).find("\"1.1 mm\"") != std::string::npos);
}

TEST_CASE("a program that ends with unsaved work offers it again, as often as it takes") {
  TemporaryFolder folder;
  const std::string file = end_with_unsaved_work(folder);
  for (int i = 0; i < 2; ++i) {
    Workbench bench(options_in(folder));
    REQUIRE(bench.recovery_offers().size() == 1);
  }
  {
    Workbench bench(options_in(folder));
    REQUIRE(bench.apply(cmd::recover(0)));
  }
  {
    Workbench bench(options_in(folder));
    REQUIRE(bench.recovery_offers().size() == 1);
    REQUIRE(bench.apply(cmd::drop_recovery(0)));
  }
  Workbench bench(options_in(folder));
  CHECK(bench.recovery_offers().empty());
}

TEST_CASE("nothing is offered of what was saved, undone or thrown away") {
  TemporaryFolder folder;
  {
    Workbench bench(options_in(folder));
    const auto edited = [&](const std::string& name) {
      bench.apply(cmd::open(folder.file(name, small_plan)));
      bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
      poll_later(bench);
    };
    edited("saved.lay.toml");
    bench.apply(cmd::save());
    edited("undone.lay.toml");
    bench.apply(cmd::undo());
    edited("dropped.lay.toml");
    bench.apply(cmd::close(false));
    CHECK(bench.question() == cmd::Question::close_unsaved);
    CHECK(bench.documents().size() == 3);
    bench.apply(cmd::close(true));
    CHECK(bench.documents().size() == 2);
  }
  Workbench bench(options_in(folder));
  CHECK(bench.recovery_offers().empty());
  CHECK(copies_in(folder) == 0);
}

TEST_CASE("work of a program that still runs is not offered") {
  TemporaryFolder folder;
  Workbench one(options_in(folder));
  one.apply(cmd::open(folder.file("a.lay.toml", small_plan)));
  one.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  poll_later(one);
  REQUIRE(await_copies(folder, 1));
  Workbench other(options_in(folder));
  CHECK(other.recovery_offers().empty());
}

TEST_CASE("copies round trip, what is none is refused") {
  const RecoveryCopy copy{"/a \"b\"/c.lay.toml", small_plan, "text\n[[[[[[[[[[[[[[[[[[[[\n\\ \"\"\"\"\n",
                          1234567890};
  const Result<RecoveryCopy> read = recovery_from_text(recovery_text(copy), "x");
  REQUIRE(read.ok());
  CHECK(read.value().file == copy.file);
  CHECK(read.value().original == copy.original);
  CHECK(read.value().text == copy.text);
  CHECK(read.value().time_s == copy.time_s);
  for (const char* text : {"", "format = \"lay-plan 1\"\n", "format = \"laywright-recovery 1\"\n", "[[", "\x01"}) {
    CHECK_FALSE(recovery_from_text(text, "x").ok());
  }
}

TEST_CASE("folders full of rubbish offer nothing and stop nobody") {
  TemporaryFolder folder;
  std::filesystem::create_directories(folder.path() / "state/recovery/session-abc");
  folder.file("state/recovery/stray.toml", "x");
  folder.file("state/recovery/session-abc/1.toml", "[[[\x02");
  Workbench bench(options_in(folder));
  CHECK(bench.recovery_offers().empty());
}

TEST_CASE("a folder of unsaved work that cannot be read is no reason to fail, and none is lost") {
  TemporaryFolder folder;
  const std::string file = end_with_unsaved_work(folder);
  // From the first entry of the folders to the last one's end.
  for (int entries = 0; entries < 6; ++entries) {
    CAPTURE(entries);
    const FailingFolders failing(entries);
    Workbench bench(options_in(folder));
    bench.start({});
  }
  Workbench bench(options_in(folder));
  REQUIRE(bench.recovery_offers().size() == 1);
  CHECK(bench.recovery_offers().front().work.file == file);
}
