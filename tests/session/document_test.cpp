// An open plan and its file.
#include "bench_for_tests.h"

#include <sys/stat.h>

#include "plan/plan_file.h"

using namespace laywright;
using namespace laywright::testing;

namespace {

struct Opened {
  TemporaryFolder folder;
  std::string file;
  Workbench bench;

  explicit Opened(const std::string& text = small_plan)
      : file(folder.file("plan.lay.toml", text)), bench(options_in(folder)) {
    REQUIRE(bench.apply(cmd::open(file)));
  }
  [[nodiscard]] const Document& doc() const { return document(bench); }
};

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("saving changes the value that was edited and nothing else") {
  Opened open;
  CHECK_FALSE(open.doc().dirty());
  REQUIRE(open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm")));
  REQUIRE(open.bench.apply(cmd::type_field("fiber.friction", "0.45")));
  CHECK(open.doc().dirty());
  REQUIRE(open.bench.apply(cmd::save()));
  CHECK_FALSE(open.doc().dirty());
  std::string expected = replaced(small_plan, "\"1.02 mm\"", "\"1.1 mm\"");
  expected = replaced(expected, "friction = 0.5", "friction = 0.45");
  CHECK(contents(open.file) == expected);
}

TEST_CASE("undone to what was saved, a plan is clean, undone further, it is not") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  open.bench.apply(cmd::save());
  open.bench.apply(cmd::type_field("traverse.pitch", "1.2 mm"));
  CHECK(open.doc().dirty());
  open.bench.apply(cmd::undo());
  CHECK_FALSE(open.doc().dirty());
  open.bench.apply(cmd::undo());
  CHECK(open.doc().dirty());
  open.bench.apply(cmd::save());
  CHECK(contents(open.file) == small_plan);
  open.bench.apply(cmd::redo());
  CHECK(open.doc().state().draft.traverse.pitch_mm == 1.1);
}

TEST_CASE("saved to another name, the plan is that file, the first stays as it was") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  const std::string other = (open.folder.path() / "other.lay.toml").string();
  REQUIRE(open.bench.apply(cmd::save_as(other)));
  CHECK(open.doc().path() == other);
  CHECK(contents(open.file) == small_plan);
  CHECK(load_plan(other).value().traverse().pitch_mm == 1.1);
  CHECK(open.bench.settings().recent.front() == other);
}

TEST_CASE("a save that fails says so and leaves the plan unsaved") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  CHECK_FALSE(open.bench.apply(cmd::save_as("/no/such/folder/x.lay.toml")));
  CHECK(open.doc().dirty());
  CHECK(open.doc().path() == open.file);
  REQUIRE_FALSE(open.bench.notices().empty());
  CHECK_FALSE(open.bench.notices().back().issues.empty());
}

TEST_CASE("a value that cannot be read is not saved away") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1 furlong"));
  CHECK_FALSE(open.bench.apply(cmd::save()));
  CHECK(contents(open.file) == small_plan);
  CHECK(open.bench.notices().back().issues.front().what.find("traverse.pitch") != std::string::npos);
}

TEST_CASE("a plan with faults opens, tells them, and can be mended field by field") {
  std::string text = replaced(small_plan, "pitch = \"1.02 mm\"", "pitch = 1.02");
  text = replaced(text, "friction = 0.5 ", "friktion = 0.5 ");
  Opened open(text);
  CHECK_FALSE(open.doc().sound());
  CHECK_FALSE(open.bench.hint().empty());
  open.bench.apply(cmd::type_field("traverse.pitch", "1.02 mm"));
  open.bench.apply(cmd::type_field("fiber.friction", "0.5"));
  CHECK_FALSE(open.doc().sound());  // the unknown key is still there
  CHECK(unknown_in(open.doc().state()).size() == 1);
  CHECK_FALSE(open.bench.apply(cmd::save()));
  REQUIRE(open.bench.apply(cmd::leave_out_unknown()));
  CHECK(open.doc().sound());
  REQUIRE(open.bench.apply(cmd::save()));
  CHECK(load_plan(open.file).ok());
  CHECK(load_plan(open.file).value().traverse().pitch_mm == 1.02);
}

TEST_CASE("a table that is missing is no longer missed once its fields are given") {
  std::string text = small_plan;
  text.resize(text.find("[fiber]"));
  text +=
      "[traverse]\npitch = \"1 mm\"\nleft_stop = \"0.5 mm\"\nright_stop = \"0.5 mm\"\nfree_length = \"1 mm\"\n"
      "[wind]\nturns = 3\n";
  Opened open(text);
  CHECK_FALSE(open.doc().sound());
  open.bench.apply(cmd::type_field("fiber.diameter", "1 mm"));
  CHECK_FALSE(open.doc().sound());
  open.bench.apply(cmd::type_field("fiber.friction", "0.5"));
  CHECK(open.doc().sound());
}

TEST_CASE("a file that is no plan, or not there, is told and not opened") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  CHECK_FALSE(bench.apply(cmd::open(folder.file("a.lay.toml", "format = \"lay-plan 1\"\n[spool\n"))));
  CHECK_FALSE(bench.apply(cmd::open(folder.file("b.lay.toml", "format = \"lay-plan 9\"\n"))));
  CHECK_FALSE(bench.apply(cmd::open((folder.path() / "c.lay.toml").string())));
  CHECK_FALSE(bench.apply(cmd::open(folder.path().string())));
  CHECK(bench.documents().empty());
  REQUIRE(bench.notices().size() == 4);
  CHECK(bench.notices().front().issues.front().line == 2);
}

TEST_CASE("a file that others change is noticed, and neither side is lost unasked") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  const std::string theirs = replaced(small_plan, "1.02 mm", "1.05 mm");
  open.folder.file("plan.lay.toml", theirs);
  REQUIRE(wait_until(
      open.bench, [&] { return open.doc().on_disk() == OnDisk::changed; }, 20.0));
  open.bench.poll();
  REQUIRE_FALSE(open.bench.notices().empty());
  CHECK(open.bench.notices().back().text.find("plan.lay.toml was changed") != std::string::npos);

  SECTION("a save is refused") {
    CHECK_FALSE(open.bench.apply(cmd::save()));
    CHECK(contents(open.file) == theirs);
  }
  SECTION("kept mine, a save replaces theirs") {
    REQUIRE(open.bench.apply(cmd::keep_mine()));
    CHECK(open.doc().on_disk() == OnDisk::same);
    REQUIRE(open.bench.apply(cmd::save()));
    CHECK(load_plan(open.file).value().traverse().pitch_mm == 1.1);
  }
  SECTION("reverted, theirs is shown, and mine comes back by undo") {
    REQUIRE(open.bench.apply(cmd::revert()));
    CHECK(open.doc().state().draft.traverse.pitch_mm == 1.05);
    CHECK_FALSE(open.doc().dirty());
    open.bench.apply(cmd::undo());
    CHECK(open.doc().state().draft.traverse.pitch_mm == 1.1);
    CHECK(open.doc().dirty());
  }
}

TEST_CASE("a save right after another's change, before it was noticed, is refused too") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  open.folder.file("plan.lay.toml", std::string(small_plan) + "# theirs\n");
  CHECK_FALSE(open.bench.apply(cmd::save()));
  CHECK(contents(open.file) == std::string(small_plan) + "# theirs\n");
}

TEST_CASE("a file that is gone is written anew by a save") {
  Opened open;
  open.bench.apply(cmd::type_field("traverse.pitch", "1.1 mm"));
  std::filesystem::remove(open.file);
  REQUIRE(wait_until(
      open.bench, [&] { return open.doc().on_disk() == OnDisk::gone; }, 20.0));
  REQUIRE(open.bench.apply(cmd::save()));
  CHECK(load_plan(open.file).ok());
}

TEST_CASE("an edit through a title and notes keeps the build: only numbers are laid anew") {
  Opened open;
  wait_for_build(open.bench);
  const WoundPtr before = open.bench.wound();
  open.bench.apply(cmd::set_title("Another name"));
  open.bench.apply(cmd::set_notes("two\nlines"));
  CHECK_FALSE(open.doc().laying().busy);
  CHECK(open.bench.wound() == before);
  open.bench.apply(cmd::save());
  CHECK(load_plan(open.file).value().title() == "Another name");
}

TEST_CASE("a pipe, a device and a folder are not opened, and are not waited for") {
  TemporaryFolder folder;
  Workbench bench(options_in(folder));
  REQUIRE(::mkfifo((folder.path() / "pipe.lay.toml").c_str(), 0600) == 0);
  REQUIRE(::mkfifo((folder.path() / "pipe.lesson.toml").c_str(), 0600) == 0);
  for (const std::string& path :
       {(folder.path() / "pipe.lay.toml").string(), (folder.path() / "pipe.lesson.toml").string(),
        std::string("/dev/zero"), folder.path().string()}) {
    CAPTURE(path);
    CHECK_FALSE(bench.apply(cmd::open(path)));
    REQUIRE_FALSE(bench.notices().back().issues.empty());
    const std::string& what = bench.notices().back().issues.front().what;
    CHECK(what.find("it must be a file, ") != std::string::npos);
    CHECK((what.find("a lesson") != std::string::npos) == path.ends_with("pipe.lesson.toml"));
  }
}
