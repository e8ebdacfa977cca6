#include "paper/file_set.h"

#include <cerrno>
#include <system_error>
#include <utility>

#include <fmt/format.h>
#include <unistd.h>

#include "base/atomic_file.h"

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

// What stands in a file's place and is not to be replaced; empty where a file may come.
std::string why_not_replaced(const fs::path& place) {
  std::error_code error;
  const fs::file_status there = fs::symlink_status(place, error);
  if (!fs::exists(there)) return "";
  if (fs::is_directory(there)) return "a folder of that name stands there";
  if (fs::is_symlink(there)) return "a link of that name stands there, and no link is replaced: remove it";
  if (!fs::is_regular_file(there)) return "something that is no file stands there";
  return ::access(place.c_str(), W_OK) == 0 ? "" : "the one that stands there is write-protected";
}

}  // namespace

Result<FileSet> FileSet::into(const std::string& folder) {
  FileSet set;
  // A path that ends in a slash has an empty last part, which would be looked for as a folder of its own.
  set.folder_ = fs::path(folder).lexically_normal();
  if (!set.folder_.has_filename()) set.folder_ = set.folder_.parent_path();
  std::error_code error;
  for (const fs::path& missing : missing_folders(set.folder_)) {
    const bool made = fs::create_directory(missing, error);
    if (error) return set.trouble("", error.message());
    if (made) set.made_folders_.push_back(missing);  // else another program was quicker
  }
  if (!fs::is_directory(set.folder_, error)) return set.trouble("", "it is a file, not a folder");
  clear_leftovers(set.folder_);
  set.staging_ = make_staging(set.folder_);
  if (set.staging_.path.empty()) return set.trouble("", std::generic_category().message(errno));
  return set;
}

FileSet::FileSet(FileSet&& other) noexcept
    : folder_(std::move(other.folder_)),
      staging_(std::exchange(other.staging_, Staging{})),
      made_folders_(std::exchange(other.made_folders_, {})),
      names_(std::move(other.names_)) {}

FileSet::~FileSet() {
  std::error_code error;
  if (!staging_.path.empty()) remove_staging(staging_.path);
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
  Issues trouble = write_file_here(staging_.file(name), [&](std::ostream& out) {
    write(out);
    return true;
  });
  for (Issue& issue : trouble) issue.file = (folder_ / name).string();
  if (trouble.empty()) names_.push_back(name);
  return trouble;
}

Issues FileSet::add(const std::string& name, const std::string& bytes) {
  return add(name, [&](std::ostream& out) { out.write(bytes.data(), static_cast<std::streamsize>(bytes.size())); });
}

Issues FileSet::commit() {
  for (const std::string& name : names_) {
    if (const std::string why = why_not_replaced(folder_ / name); !why.empty()) return {trouble(name, why)};
  }
  const Placed placed = put_in_place(folder_, staging_.path, names_);
  if (!placed.name.empty()) {
    if (!placed.undone) staging_ = {};
    return {trouble(placed.name, placed.why)};
  }
  made_folders_.clear();
  return {};
}

}  // namespace laywright
