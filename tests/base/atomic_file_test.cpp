#include "base/atomic_file.h"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <sys/stat.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include "base/leftover.h"
#include "temporary_folder.h"

using namespace laywright;
namespace fs = std::filesystem;

namespace {

std::size_t entries(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

unsigned mode_of(const fs::path& path) {
  struct stat s {};
  REQUIRE(::stat(path.c_str(), &s) == 0);
  return s.st_mode & 07777U;
}

}  // namespace

TEST_CASE("a new file has the bytes and the permissions that any new file gets") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "new.txt";
  const std::string bytes("one\0two\r\n", 9);
  REQUIRE(write_file_atomically(file, bytes).empty());
  CHECK(bytes_of(file) == bytes);
  std::ofstream(folder.path() / "plain.txt") << "x";
  CHECK(mode_of(file) == mode_of(folder.path() / "plain.txt"));
  CHECK(entries(folder.path()) == 2);
}

TEST_CASE("an existing file is replaced whole and keeps its permissions") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "old.txt";
  std::ofstream(file) << std::string(100000, 'x');
  REQUIRE(::chmod(file.c_str(), 0640) == 0);
  REQUIRE(write_file_atomically(file, "short").empty());
  CHECK(bytes_of(file) == "short");
  CHECK(mode_of(file) == 0640);
  CHECK(entries(folder.path()) == 1);
}

TEST_CASE("a link stays a link, and what it leads to is replaced") {
  const testing::TemporaryFolder folder;
  fs::create_directory(folder.path() / "real");
  std::ofstream(folder.path() / "real" / "a.txt") << "old";
  fs::create_symlink("real/a.txt", folder.path() / "link.txt");
  REQUIRE(write_file_atomically(folder.path() / "link.txt", "new").empty());
  CHECK(fs::is_symlink(folder.path() / "link.txt"));
  CHECK(bytes_of(folder.path() / "real" / "a.txt") == "new");
}

TEST_CASE("a link that leads to no file yet stays a link, and the file is made there") {
  const testing::TemporaryFolder folder;
  fs::create_directory(folder.path() / "real");
  fs::create_symlink("real/again.txt", folder.path() / "link.txt");
  fs::create_symlink("a.txt", folder.path() / "real" / "again.txt");
  fs::create_symlink(folder.path() / "nowhere" / "a.txt", folder.path() / "lost.txt");
  fs::create_symlink("round.txt", folder.path() / "round.txt");
  REQUIRE(write_file_atomically(folder.path() / "link.txt", "new").empty());
  CHECK(bytes_of(folder.path() / "real" / "a.txt") == "new");
  CHECK(write_file_atomically(folder.path() / "lost.txt", "new").size() == 1);
  CHECK(write_file_atomically(folder.path() / "round.txt", "new").size() == 1);
  for (const char* link : {"link.txt", "real/again.txt", "lost.txt", "round.txt"}) {
    CHECK(fs::is_symlink(folder.path() / link));
  }
  CHECK(entries(folder.path()) == 4);
}

TEST_CASE("what was left of the same file is cleared away, what others work with is not touched") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "a.txt";
  fs::path left;
  {
    const HiddenFile killed = make_hidden_file(file);
    REQUIRE(killed.file.ok());
    left = killed.path;
    CHECK(left.filename().string().starts_with(hidden_prefix));
    // While somebody has it, it stays.
    remove_left_file(left);
    REQUIRE(write_file_atomically(file, "by another").empty());
    CHECK(fs::exists(left));
    CHECK(make_hidden_file(file).path != left);
  }
  REQUIRE(fs::exists(left));
  REQUIRE(write_file_atomically(file, "later").empty());
  CHECK_FALSE(fs::exists(left));
  CHECK(bytes_of(file) == "later");
}

TEST_CASE("a hidden name that leads elsewhere is not followed") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "a.txt";
  const fs::path hidden = make_hidden_file(file).path;
  fs::remove(hidden);
  folder.file("other.txt", "of others");
  fs::create_symlink("other.txt", hidden);
  REQUIRE(write_file_atomically(file, "new").empty());
  CHECK(bytes_of(folder.path() / "other.txt") == "of others");
  CHECK_FALSE(fs::is_symlink(file));
}

TEST_CASE("a name as long as the file system allows is written") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / std::string(255, 'n');
  REQUIRE(write_file_atomically(file, "x").empty());
  CHECK(bytes_of(file) == "x");
}

TEST_CASE("what cannot be written is one error that names the file, and nothing is left behind") {
  const testing::TemporaryFolder folder;
  fs::create_directory(folder.path() / "sub");
  std::ofstream(folder.path() / "file") << "x";
  const fs::path targets[] = {folder.path() / "sub", folder.path() / "missing" / "a.txt",
                              folder.path() / "file" / "a.txt", folder.path() / std::string(256, 'n'), fs::path()};
  for (const fs::path& target : targets) {
    const Issues issues = write_file_atomically(target, "bytes");
    REQUIRE(issues.size() == 1);
    CHECK(issues[0].severity == Severity::error);
    CHECK(issues[0].file == target.string());
    CHECK(issues[0].what.find("cannot be written") == 0);
  }
  CHECK(entries(folder.path()) == 2);
  CHECK(bytes_of(folder.path() / "file") == "x");
}

TEST_CASE("a write-protected file is refused") {
  if (::geteuid() == 0) return;  // the superuser may write anything
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "kept.txt";
  std::ofstream(file) << "old";
  REQUIRE(::chmod(file.c_str(), 0444) == 0);
  CHECK(write_file_atomically(file, "new").size() == 1);
  CHECK(bytes_of(file) == "old");
}

TEST_CASE("a device is written to, not replaced, a full disk is told") {
  REQUIRE(write_file_atomically("/dev/null", "x").empty());
  CHECK(fs::is_character_file("/dev/null"));
  if (fs::exists("/dev/full")) {
    const Issues issues = write_file_atomically("/dev/full", "x");
    REQUIRE(issues.size() == 1);
    CHECK(fs::is_character_file("/dev/full"));
  }
}

TEST_CASE("a stream is written as a whole, in small pieces and large ones") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "long.txt";
  std::string expected;
  const Issues issues = write_file_atomically(file, [&](std::ostream& out) {
    for (int i = 0; i < 3000; ++i) {
      const std::string piece(static_cast<std::size_t>(i % 97 == 0 ? 70'000 : i % 50),
                              static_cast<char>('a' + i % 26));
      out << piece << '\n';
      expected += piece + '\n';
    }
    return true;
  });
  CHECK(issues.empty());
  CHECK(bytes_of(file) == expected);
  CHECK(entries(folder.path()) == 1);
}

TEST_CASE("a stream that gives up leaves what was there, and is no error") {
  const testing::TemporaryFolder folder;
  const fs::path file = folder.path() / "kept.txt";
  std::ofstream(file) << "old";
  const auto give_up = [](std::ostream& out) {
    out << std::string(200'000, 'x');
    return false;
  };
  CHECK(write_file_atomically(file, give_up).empty());
  CHECK(bytes_of(file) == "old");
  CHECK(write_file_atomically(folder.path() / "never.txt", give_up).empty());
  CHECK(entries(folder.path()) == 1);
}

TEST_CASE("a stream that failed is an error, and no file") {
  const testing::TemporaryFolder folder;
  const Issues issues = write_file_atomically(folder.path() / "a.txt", [](std::ostream& out) {
    out << "half";
    out.setstate(std::ios::badbit);
    return true;
  });
  CHECK(issues.size() == 1);
  CHECK(entries(folder.path()) == 0);
}

TEST_CASE("a stream into a full device is an error") {
  if (!fs::exists("/dev/full")) return;
  const Issues issues = write_file_atomically("/dev/full", [](std::ostream& out) {
    out << std::string(200'000, 'x');
    return true;
  });
  REQUIRE(issues.size() == 1);
  CHECK(issues[0].what.find("cannot be written") == 0);
}
