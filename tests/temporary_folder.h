// An empty folder of its own for each test, gone afterwards: tests run side by side.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>

namespace laywright::testing {

class TemporaryFolder {
 public:
  TemporaryFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "laywright-test-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path_ = std::filesystem::canonical(name);
  }
  ~TemporaryFolder() {
    std::error_code error;
    std::filesystem::remove_all(path_, error);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  // Writes a file and returns its path.
  std::string file(const std::string& name, const std::string& text) const {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return (path_ / name).string();
  }

 private:
  std::filesystem::path path_;
};

}  // namespace laywright::testing
