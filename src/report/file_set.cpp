#include "report/file_set.h"

#include <cerrno>
#include <cstdlib>
#include <fstream>
#include <system_error>
#include <utility>

#include <fmt/format.h>

namespace laywright {
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> missing_folders(const fs::path& folder) {
  std::vector<fs::path> missing;
  std::error_code error;
  for (fs::path at = folder; !at.empty() && !fs::exists(at, error); at = at.parent_path()) {
    missing.insert(missing.begin(), at);
  }
  return missing;
}

}  // namespace

Result<FileSet> FileSet::into(const std::string& folder) {
  FileSet set;
  // A path that ends in a slash has an empty last part, which would be looked for as a folder of its own.
  set.folder_ = fs::path(folder).lexically_normal();
  if (!set.folder_.has_filename()) set.folder_ = set.folder_.parent_path();
  std::error_code error;
  for (const fs::path& missing : missing_folders(set.folder_)) {
    if (!fs::create_directory(missing, error)) return set.trouble("", error.message());
    set.made_folders_.push_back(missing);
  }
  if (!fs::is_directory(set.folder_, error)) return set.trouble("", "it is a file, not a folder");
  std::string pattern = (set.folder_ / ".laywright-XXXXXX").string();
  if (::mkdtemp(pattern.data()) == nullptr) return set.trouble("", std::generic_category().message(errno));
  set.staging_ = pattern;
  return set;
}

FileSet::FileSet(FileSet&& other) noexcept
    : folder_(std::move(other.folder_)),
      staging_(std::exchange(other.staging_, {})),
      made_folders_(std::exchange(other.made_folders_, {})),
      names_(std::move(other.names_)) {}

FileSet::~FileSet() {
  std::error_code error;
  if (!staging_.empty()) fs::remove_all(staging_, error);
  for (auto made = made_folders_.rbegin(); made != made_folders_.rend(); ++made) fs::remove(*made, error);
}

Issue FileSet::trouble(const std::string& name, const std::string& why) const {
  Issue issue;
  issue.file = name.empty() ? folder_.string() : (folder_ / name).string();
  issue.what = name.empty() ? fmt::format("cannot write into this folder ({}); choose another one", why)
                            : fmt::format("cannot write this file ({})", why);
  return issue;
}

Issues FileSet::add(const std::string& name, const std::function<void(std::ostream&)>& write) {
  errno = 0;
  std::ofstream file(staging_ / name, std::ios::binary);
  if (file) write(file);
  file.close();
  if (!file) return {trouble(name, errno != 0 ? std::generic_category().message(errno) : "writing failed")};
  names_.push_back(name);
  return {};
}

Issues FileSet::add(const std::string& name, const std::string& bytes) {
  return add(name, [&](std::ostream& out) { out.write(bytes.data(), static_cast<std::streamsize>(bytes.size())); });
}

Issues FileSet::commit() {
  std::error_code error;
  for (const std::string& name : names_) {
    if (fs::is_directory(folder_ / name, error)) return {trouble(name, "a folder of that name stands there")};
  }
  for (const std::string& name : names_) {
    fs::rename(staging_ / name, folder_ / name, error);
    if (error) return {trouble(name, error.message())};
  }
  made_folders_.clear();
  return {};
}

}  // namespace laywright
