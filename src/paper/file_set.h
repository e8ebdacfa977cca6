// A set of files that appears in a folder as a whole, or not at all: each file is written beside its place, and at the
// end all are brought to the disk and renamed into theirs. An existing file is replaced only then. A program that is
// killed in that moment leaves files of one set only, without its first file, and the next set in that folder begins by
// putting the rest in place.
#pragma once

#include <filesystem>
#include <functional>
#include <ostream>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/result.h"
#include "paper/set_in_place.h"

namespace laywright {

class FileSet {
 public:
  // Makes the folder where it is missing, proves that it can be written into, and finishes what killed programs left.
  [[nodiscard]] static Result<FileSet> into(const std::string& folder);

  FileSet(FileSet&& other) noexcept;
  FileSet& operator=(FileSet&&) = delete;
  FileSet(const FileSet&) = delete;
  FileSet& operator=(const FileSet&) = delete;

  // Without a commit, leaves no trace: neither files nor the folders that it made.
  ~FileSet();

  // Adds a file; `write` puts its bytes. The first one tells by being there that all others are. Returns no issues, or one that names the file and why it failed.
  [[nodiscard]] Issues add(const std::string& name, const std::function<void(std::ostream&)>& write);
  [[nodiscard]] Issues add(const std::string& name, const std::string& bytes);

  // Puts all files into their places. Returns no issues, or one; then no file was replaced. A folder or a link in the
  // place of a file is left there, and an issue.
  [[nodiscard]] Issues commit();

  [[nodiscard]] const std::vector<std::string>& names() const { return names_; }

 private:
  FileSet() = default;
  [[nodiscard]] Issue trouble(const std::string& name, const std::string& why) const;

  std::filesystem::path folder_;
  Staging staging_;                                  // without a path when there is nothing to clean up
  std::vector<std::filesystem::path> made_folders_;  // outermost first
  std::vector<std::string> names_;
};

}  // namespace laywright
