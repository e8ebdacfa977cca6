#include <array>
#include <barrier>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>

#include "paper/file_set.h"
#include "temporary_folder.h"

using namespace laywright;
namespace fs = std::filesystem;

namespace {

std::string content(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

void write(const fs::path& file, const std::string& text) { std::ofstream(file) << text; }

std::ptrdiff_t entries(const fs::path& folder) {
  return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

FileSet opened_in(const fs::path& folder) {
  Result<FileSet> opened = FileSet::into(folder.string());
  REQUIRE(opened.ok());
  return std::move(opened).value();
}

}  // namespace

TEST_CASE("a set of files appears as a whole when it is committed") {
  const testing::TemporaryFolder scratch;
  const fs::path out = scratch.path() / "a" / "b";
  {
    Result<FileSet> opened = FileSet::into(out.string() + "/");
    REQUIRE(opened.ok());
    FileSet files = std::move(opened).value();
    CHECK(files.add("one.txt", "1\n").empty());
    CHECK(files.add("two.txt", [](std::ostream& stream) { stream << 2 << '\n'; }).empty());
    CHECK_FALSE(fs::exists(out / "one.txt"));
    CHECK(files.commit().empty());
  }
  CHECK(content(out / "one.txt") == "1\n");
  CHECK(content(out / "two.txt") == "2\n");
  CHECK(entries(out) == 2);
}

TEST_CASE("without a commit nothing is left, and what was there stays") {
  const testing::TemporaryFolder scratch;
  write(scratch.path() / "one.txt", "old");
  {
    Result<FileSet> opened = FileSet::into(scratch.path().string());
    REQUIRE(opened.ok());
    FileSet files = std::move(opened).value();
    CHECK(files.add("one.txt", "new").empty());
    Result<FileSet> deeper = FileSet::into((scratch.path() / "x" / "y").string());
    REQUIRE(deeper.ok());
  }
  CHECK(content(scratch.path() / "one.txt") == "old");
  CHECK(entries(scratch.path()) == 1);
}

TEST_CASE("a folder that is a file is refused at once") {
  const testing::TemporaryFolder scratch;
  write(scratch.path() / "file", "mine");
  for (const fs::path& place : {scratch.path() / "file", scratch.path() / "file" / "deeper"}) {
    const Result<FileSet> opened = FileSet::into(place.string());
    REQUIRE_FALSE(opened.ok());
    CHECK(opened.issues().front().file.find("file") != std::string::npos);
  }
  CHECK(content(scratch.path() / "file") == "mine");
}

TEST_CASE("a place that a folder holds stops the whole set") {
  const testing::TemporaryFolder scratch;
  fs::create_directory(scratch.path() / "two.txt");
  write(scratch.path() / "one.txt", "old");
  Result<FileSet> opened = FileSet::into(scratch.path().string());
  REQUIRE(opened.ok());
  FileSet files = std::move(opened).value();
  CHECK(files.add("one.txt", "new").empty());
  CHECK(files.add("two.txt", "new").empty());
  const Issues issues = files.commit();
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].file == (scratch.path() / "two.txt").string());
  CHECK(content(scratch.path() / "one.txt") == "old");
}

TEST_CASE("a writer that fails is an issue that names the file") {
  const testing::TemporaryFolder scratch;
  Result<FileSet> opened = FileSet::into(scratch.path().string());
  REQUIRE(opened.ok());
  FileSet files = std::move(opened).value();
  const Issues issues = files.add("bad.txt", [](std::ostream& stream) { stream.setstate(std::ios::badbit); });
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].file == (scratch.path() / "bad.txt").string());
  CHECK(files.names().empty());
}

TEST_CASE("a link in the place of a file stays, and stops the whole set") {
  const testing::TemporaryFolder scratch;
  write(scratch.path() / "mine", "mine");
  const fs::path out = scratch.path() / "out";
  fs::create_directory(out);
  write(out / "one.txt", "old");
  fs::create_symlink("../mine", out / "two.txt");
  {
    FileSet files = opened_in(out);
    CHECK(files.add("one.txt", "new").empty());
    CHECK(files.add("two.txt", "new").empty());
    const Issues issues = files.commit();
    REQUIRE(issues.size() == 1);
    CHECK(issues[0].file == (out / "two.txt").string());
    CHECK(issues[0].what.find("a link") != std::string::npos);
  }
  CHECK(fs::is_symlink(out / "two.txt"));
  CHECK(content(scratch.path() / "mine") == "mine");
  CHECK(content(out / "one.txt") == "old");
  CHECK(entries(out) == 2);
}

TEST_CASE("a file that cannot come to its place: those that had theirs go back") {
  const testing::TemporaryFolder scratch;
  const fs::path out = scratch.path();
  for (const char* name : {"one.txt", "two.txt", "three.txt"}) write(out / name, "old");
  Staging staging = make_staging(out);
  REQUIRE_FALSE(staging.path.empty());
  for (const char* name : {"one.txt", "two.txt"}) write(staging.file(name), "new");
  // Nothing comes over a folder that has something in it, and it stands in no file's way before.
  fs::create_directories(staging.file("three.txt"));
  fs::create_directories(staging.path / "old" / "three.txt" / "full");
  const Placed placed = put_in_place(out, staging.path, {"one.txt", "two.txt", "three.txt"});
  CHECK(placed.name == "three.txt");
  CHECK(placed.undone);
  for (const char* name : {"one.txt", "two.txt", "three.txt"}) CHECK(content(out / name) == "old");
  remove_staging(staging.path);
  CHECK(entries(out) == 3);
}

TEST_CASE("two sets in one folder at once do not meet, and what a third left is cleared away") {
  const testing::TemporaryFolder scratch;
  const auto open = [&] { return opened_in(scratch.path()); };
  const fs::path left = make_staging(scratch.path()).path;  // nobody holds it any more
  write(left / "new" / "one.txt", "half a set");
  {
    FileSet one = open(), other = open();
    CHECK_FALSE(fs::exists(left));
    for (FileSet* each : {&one, &other}) {
      const std::string bytes = each == &one ? "1" : "2";
      CHECK(each->add("one.txt", bytes).empty());
      CHECK(each->add("two.txt", bytes).empty());
    }
    CHECK(one.commit().empty());
    CHECK(other.commit().empty());
  }
  CHECK(content(scratch.path() / "one.txt") == "2");
  CHECK(content(scratch.path() / "two.txt") == "2");
  CHECK(entries(scratch.path()) == 2);
}

TEST_CASE("many programs write sets into one folder, some of them ended at any moment: all files are of one") {
  const testing::TemporaryFolder scratch;
  constexpr int writers = 4, sets = 20;
  // Ends itself after so many microseconds, if any; each file holds who wrote it.
  const auto write_set = [&](useconds_t ends_after) {
    if (ends_after > 0) ::ualarm(ends_after, 0);
    Result<FileSet> opened = FileSet::into(scratch.path().string());
    if (!opened.ok()) return false;
    FileSet files = std::move(opened).value();
    for (const char* name : {"one.txt", "two.txt", "three.txt"}) {
      if (!files.add(name, std::to_string(::getpid())).empty()) return false;
    }
    return files.commit().empty();
  };
  const auto run = [&](unsigned seed) {
    std::mt19937 random(seed);
    int failed = 0;
    for (int i = 0; i < sets; ++i) {
      const bool ends = random() % 2 == 0;
      const auto ends_after = static_cast<useconds_t>(ends ? 500 + random() % 20'000 : 0);
      const pid_t child = ::fork();
      if (child == 0) ::_exit(write_set(ends_after) ? 0 : 1);
      int status = 0;
      ::waitpid(child, &status, 0);
      failed += WIFEXITED(status) && WEXITSTATUS(status) != 0 ? 1 : 0;
    }
    return failed;
  };
  std::vector<pid_t> children;
  for (unsigned seed = 1; seed <= writers; ++seed) {
    children.push_back(::fork());
    if (children.back() == 0) ::_exit(run(seed));
  }
  for (const pid_t child : children) {
    int status = 1;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(status == 0);  // none failed by what others did
  }
  opened_in(scratch.path());  // clears what the last ones left
  REQUIRE(entries(scratch.path()) == 3);
  CHECK(content(scratch.path() / "one.txt") == content(scratch.path() / "two.txt"));
  CHECK(content(scratch.path() / "one.txt") == content(scratch.path() / "three.txt"));
}

TEST_CASE("many that make the same new folder at the same moment all get to write there") {
  constexpr std::size_t many = 8, rounds = 60;
  const testing::TemporaryFolder scratch;
  for (std::size_t round = 0; round < rounds; ++round) {
    const fs::path out = scratch.path() / std::to_string(round) / "shards";
    std::barrier start(many), end(many);
    std::array<std::string, many> troubles;
    {
      std::vector<std::jthread> programs;
      for (std::size_t i = 0; i < many; ++i) {
        programs.emplace_back([&, i] {
          start.arrive_and_wait();
          const Result<FileSet> opened = FileSet::into(out.string());
          if (!opened.ok()) troubles[i] = opened.issues().front().what;
          end.arrive_and_wait();  // what one has made goes when it ends without a commit
        });
      }
    }
    for (const std::string& trouble : troubles) CHECK(trouble == "");
  }
}
