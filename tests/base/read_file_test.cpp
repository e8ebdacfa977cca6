#include "base/read_file.h"

#include <filesystem>

#include <sys/stat.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include "temporary_folder.h"

using namespace laywright;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t most = 2'000'000;

std::string told(const fs::path& path) {
  const Result<std::string> read = read_file(path, "a table", most);
  REQUIRE_FALSE(read.ok());
  REQUIRE(read.issues().size() == 1);
  CHECK(read.issues()[0].file == path.string());
  return read.issues()[0].what;
}

}  // namespace

TEST_CASE("a file is read as it is, through a link as well") {
  const testing::TemporaryFolder folder;
  const std::string bytes("one\0two\r\n\xff", 10);
  const std::string file = folder.file("a.csv", bytes);
  fs::create_symlink("a.csv", folder.path() / "link.csv");
  CHECK(read_file(file, "a table", most).value() == bytes);
  CHECK(read_file(folder.path() / "link.csv", "a table", most).value() == bytes);
  CHECK(read_file(folder.file("empty.csv", ""), "a table", most).value().empty());
}

TEST_CASE("a file is read up to its limit, and not a byte further") {
  const testing::TemporaryFolder folder;
  const std::string file = folder.file("a.csv", std::string(most, 'x'));
  CHECK(read_file(file, "a table", most).value().size() == most);
  CHECK(read_file(file, "a table", 3 * most).value().size() == most);
  CHECK(told(folder.file("b.csv", std::string(most + 1, 'x'))).find("is larger than 2 MB, which a table never is") ==
        0);
  // Far more than any memory holds: nothing of it is read.
  fs::resize_file(file, std::uintmax_t{1} << 40U);
  CHECK(told(file).find("is larger than 2 MB") == 0);
}

TEST_CASE("a file that says it is empty, and is not, is read") {
  if (!fs::exists("/proc/self/status")) return;
  CHECK(read_file("/proc/self/status", "a table", most).value().find("Name:") == 0);
  CHECK_FALSE(read_file("/proc/self/status", "a table", 20).ok());
}

TEST_CASE("what is no plain file is told from one that is not there, and nothing waits for it") {
  const testing::TemporaryFolder folder;
  const fs::path pipe = folder.path() / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  CHECK(told(pipe) == "is a pipe; it must be a file, a table; write into one what comes from there");
  CHECK(told(folder.path()) == "is a folder; it must be a file, a table");
  CHECK(told("/dev/zero").find("is a device") == 0);
  CHECK(told("/dev/null").find("is a device") == 0);
  CHECK(told(folder.path() / "none") == "there is no such file");
  CHECK(told(folder.file("file", "x") + "/none") == "there is no such file");
  CHECK(told("") == "there is no such file");
  fs::create_symlink("round", folder.path() / "round");
  CHECK(told(folder.path() / "round").find("cannot be opened: ") == 0);
}

TEST_CASE("a file that nobody may read is told") {
  if (::geteuid() == 0) return;  // the superuser may read anything
  const testing::TemporaryFolder folder;
  const std::string file = folder.file("a.csv", "x");
  REQUIRE(::chmod(file.c_str(), 0) == 0);
  CHECK(told(file).find("cannot be opened: ") == 0);
}
