#include <filesystem>
#include <fstream>
#include <iterator>

#include <catch2/catch.hpp>

#include "report/file_set.h"

using namespace laywright;
namespace fs = std::filesystem;

namespace {

// An empty folder that goes away at the end.
struct Scratch {
  fs::path folder;
  Scratch() {
    std::string pattern = (fs::temp_directory_path() / "laywright-test-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    folder = pattern;
  }
  ~Scratch() { fs::remove_all(folder); }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
};

std::string content(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

void write(const fs::path& file, const std::string& text) { std::ofstream(file) << text; }

std::ptrdiff_t entries(const fs::path& folder) {
  return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

}  // namespace

TEST_CASE("a set of files appears as a whole when it is committed") {
  const Scratch scratch;
  const fs::path out = scratch.folder / "a" / "b";
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
  const Scratch scratch;
  write(scratch.folder / "one.txt", "old");
  {
    Result<FileSet> opened = FileSet::into(scratch.folder.string());
    REQUIRE(opened.ok());
    FileSet files = std::move(opened).value();
    CHECK(files.add("one.txt", "new").empty());
    Result<FileSet> deeper = FileSet::into((scratch.folder / "x" / "y").string());
    REQUIRE(deeper.ok());
  }
  CHECK(content(scratch.folder / "one.txt") == "old");
  CHECK(entries(scratch.folder) == 1);
}

TEST_CASE("a folder that is a file is refused at once") {
  const Scratch scratch;
  write(scratch.folder / "file", "mine");
  for (const fs::path& place : {scratch.folder / "file", scratch.folder / "file" / "deeper"}) {
    const Result<FileSet> opened = FileSet::into(place.string());
    REQUIRE_FALSE(opened.ok());
    CHECK(opened.issues().front().file.find("file") != std::string::npos);
  }
  CHECK(content(scratch.folder / "file") == "mine");
}

TEST_CASE("a place that a folder holds stops the whole set") {
  const Scratch scratch;
  fs::create_directory(scratch.folder / "two.txt");
  write(scratch.folder / "one.txt", "old");
  Result<FileSet> opened = FileSet::into(scratch.folder.string());
  REQUIRE(opened.ok());
  FileSet files = std::move(opened).value();
  CHECK(files.add("one.txt", "new").empty());
  CHECK(files.add("two.txt", "new").empty());
  const Issues issues = files.commit();
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].file == (scratch.folder / "two.txt").string());
  CHECK(content(scratch.folder / "one.txt") == "old");
}

TEST_CASE("a writer that fails is an issue that names the file") {
  const Scratch scratch;
  Result<FileSet> opened = FileSet::into(scratch.folder.string());
  REQUIRE(opened.ok());
  FileSet files = std::move(opened).value();
  const Issues issues = files.add("bad.txt", [](std::ostream& stream) { stream.setstate(std::ios::badbit); });
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].file == (scratch.folder / "bad.txt").string());
  CHECK(files.names().empty());
}
