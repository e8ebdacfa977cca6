#include "base/folder_paths.h"

#include <catch2/catch.hpp>

#include "failing_folders.h"
#include "temporary_folder.h"

using namespace laywright;
namespace fs = std::filesystem;

TEST_CASE("what stands in a folder comes by name") {
  const testing::TemporaryFolder folder;
  for (const char* name : {"c", "a", ".b"}) folder.file(name, "");
  std::error_code error;
  CHECK(paths_in(folder.path(), error) ==
        std::vector<fs::path>{folder.path() / ".b", folder.path() / "a", folder.path() / "c"});
  CHECK_FALSE(error);
}

TEST_CASE("a folder that cannot be read, or not to its end, is told and throws nothing") {
  const testing::TemporaryFolder folder;
  for (const char* name : {"a", "b", "c"}) folder.file(name, "");
  std::error_code error;
  CHECK(paths_in(folder.path() / "none", error).empty());
  CHECK(error == std::errc::no_such_file_or_directory);
  CHECK(paths_in(folder.path() / "a", error).empty());
  CHECK(error == std::errc::not_a_directory);
  for (int entries = 0; entries < 5; ++entries) {
    CAPTURE(entries);
    const testing::FailingFolders failing(entries);
    CHECK(paths_in(folder.path(), error).size() <= 3);
    CHECK(error == std::errc::io_error);
  }
  CHECK(paths_in(folder.path(), error).size() == 3);
  CHECK_FALSE(error);
}
