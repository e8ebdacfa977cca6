// A set of files that appears in a folder as a whole, or not at all: each file is written beside its place and
// all are renamed into it at the end. An existing file is replaced only then.
#pragma once

#include <filesystem>
#include <functional>
#include <ostream>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/result.h"

namespace laywright {

class FileSet {
 public:
  // Makes the folder where it is missing and proves that it can be written into.
  [[nodiscard]] static Result<FileSet> into(const std::string& folder);

  FileSet(FileSet&& other) noexcept;
  FileSet& operator=(FileSet&&) = delete;
  FileSet(const FileSet&) = delete;
  FileSet& operator=(const FileSet&) = delete;

  // Without a commit, leaves no trace: neither files nor the folders that it made.
  ~FileSet();

  // Adds a file; `write` puts its bytes. Returns no issues, or one that names the file and why it failed.
  [[nodiscard]] Issues add(const std::string& name, const std::function<void(std::ostream&)>& write);
  [[nodiscard]] Issues add(const std::string& name, const std::string& bytes);

  // Puts all files into their places. Returns no issues, or one; then no file was replaced unless the folder was
  // changed by others in that moment.
  [[nodiscard]] Issues commit();

  [[nodiscard]] const std::vector<std::string>& names() const { return names_; }

 private:
  FileSet() = default;
  [[nodiscard]] Issue trouble(const std::string& name, const std::string& why) const;

  std::filesystem::path folder_, staging_;           // staging_ is empty when there is nothing to clean up
  std::vector<std::filesystem::path> made_folders_;  // outermost first
  std::vector<std::string> names_;
};

}  // namespace laywright
