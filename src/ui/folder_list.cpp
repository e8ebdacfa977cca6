#include "ui/folder_list.h"

#include <algorithm>
#include <system_error>

namespace laywright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_entries = 5000;
constexpr double look_every_s = 1.0;

using Seconds = std::chrono::duration<double>;

// None: it is as it was.
std::optional<FolderListing> look(const std::string& folder, const std::string& ending,
                                  const std::optional<fs::file_time_type>& known) {
  std::error_code error;
  const fs::file_time_type changed = fs::last_write_time(folder, error);
  if (!error && known && changed == *known) return std::nullopt;
  return list_folder(folder, ending);
}

}  // namespace

FolderListing list_folder(const std::string& folder, const std::string& ending) {
  FolderListing listing;
  listing.folder = folder;
  listing.ending = ending;
  std::error_code error;
  listing.changed = fs::last_write_time(folder, error);
  for (fs::directory_iterator at(folder, error), end; !error && at != end && listing.entries.size() < most_entries;
       at.increment(error)) {
    const std::string name = at->path().filename().string();
    if (name.starts_with('.')) continue;
    std::error_code unknown;
    const bool is_folder = at->is_directory(unknown);
    if (is_folder || name.ends_with(ending)) listing.entries.push_back({name, is_folder});
  }
  if (error) listing.trouble = error.message();
  std::sort(listing.entries.begin(), listing.entries.end(), [](const FolderEntry& a, const FolderEntry& b) {
    return a.folder != b.folder ? a.folder : a.name < b.name;
  });
  return listing;
}

const FolderListing* FolderList::of(const std::string& folder, const std::string& ending,
                                    const std::function<void()>& wake) {
  if (auto made = work_.take()) {
    if (*made) listing_ = std::move(**made);
  } else if (!work_.trouble().empty()) {
    listing_ = {asked_folder_, asked_ending_, {}, {}, work_.trouble().front().what};
  }
  const bool another = folder != asked_folder_ || ending != asked_ending_;
  const Clock::time_point now = Clock::now();
  const bool have = listing_.folder == folder && listing_.ending == ending;
  if (another || !looked_at_ || Seconds(now - *looked_at_).count() >= look_every_s) {
    asked_folder_ = folder;
    asked_ending_ = ending;
    looked_at_ = now;
    const auto known = have && listing_.trouble.empty() ? std::optional(listing_.changed) : std::nullopt;
    work_.ask([folder, ending, known] { return look(folder, ending, known); }, wake);
  }
  return have ? &listing_ : nullptr;
}

std::optional<double> FolderList::seconds_to_look() const {
  if (!looked_at_) return std::nullopt;
  if (work_.ready()) return 0.0;
  return look_every_s - Seconds(Clock::now() - *looked_at_).count();
}

}  // namespace laywright
