#include "session/recovery.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <stdlib.h>
#include <sys/file.h>
#include <unistd.h>

#include "base/atomic_file.h"
#include "base/folder_paths.h"
#include "base/readable.h"
#include "plan/document.h"
#include "plan/plan_file.h"
#include "plan/plan_text.h"
#include "session/folders.h"

namespace laywright {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view copy_format = "laywright-recovery 1";
constexpr const char* extension = ".toml";
// Beyond this two texts would not be read back; then the original stays out.
constexpr std::size_t most_with_original = largest_plan_bytes / 4;

std::string text_of(const Entry& document, std::string_view key) {
  const Entry* entry = document.child(key);
  return entry != nullptr && entry->kind == Entry::Kind::text ? entry->text : "";
}

Issue not_kept(const fs::path& where, std::string why) {
  Issue issue;
  issue.file = where.string();
  issue.what = std::move(why);
  return issue;
}

}  // namespace

// Holds a folder for as long as it lives, or the process does.
class RecoveryStore::Lock {
 public:
  explicit Lock(fs::path folder)
      : folder_(std::move(folder)), file_(::open((folder_ / "lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600)) {
    if (file_ >= 0 && ::flock(file_, LOCK_EX | LOCK_NB) == 0) held_ = true;
  }
  // A folder without copies is of no use to anybody.
  ~Lock() {
    if (held_ && !has_copies()) {
      std::error_code error;
      fs::remove_all(folder_, error);
    }
    if (file_ >= 0) ::close(file_);
  }
  Lock(const Lock&) = delete;
  Lock& operator=(const Lock&) = delete;

  [[nodiscard]] bool held() const { return held_; }

 private:
  [[nodiscard]] bool has_copies() const {
    std::error_code error;
    const std::vector<fs::path> files = paths_in(folder_, error);
    // Where it cannot be read, there may be some.
    return error ||
           std::any_of(files.begin(), files.end(), [](const auto& file) { return file.extension() == extension; });
  }

  fs::path folder_;
  int file_;
  bool held_ = false;
};

RecoveryStore::RecoveryStore(const fs::path& state_folder, std::shared_ptr<ErrandQueue> chores,
                             std::shared_ptr<KeepingNews> news)
    : chores_(std::move(chores)), news_(std::move(news)) {
  if (!state_folder.empty()) all_ = state_folder / "recovery";
  if (!make_private_folder(all_)) return;
  take_over();
  open_own();
}

RecoveryStore::~RecoveryStore() = default;

void RecoveryStore::take_over() {
  std::error_code error;
  // What cannot be read now stays, for a later start.
  for (const fs::path& session : paths_in(all_, error)) {
    if (!fs::is_directory(session, error)) continue;
    auto lock = std::make_unique<Lock>(session);
    if (!lock->held()) continue;
    for (const fs::path& file : paths_in(session, error)) {
      if (file.extension() != extension) continue;
      const Result<std::string> text = read_plan_text(file);
      if (!text) continue;
      const Result<RecoveryCopy> copy = recovery_from_text(text.value(), file.string());
      if (copy) offers_.push_back({file, copy.value()});
    }
    locks_.push_back(std::move(lock));
  }
  std::stable_sort(offers_.begin(), offers_.end(),
                   [](const auto& a, const auto& b) { return a.work.time_s > b.work.time_s; });
}

void RecoveryStore::open_own() {
  std::string name = (all_ / "session-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) return;
  auto lock = std::make_unique<Lock>(name);
  if (!lock->held()) return;
  locks_.push_back(std::move(lock));
  folder_ = name;
}

fs::path RecoveryStore::copy_of(std::uint64_t document) const {
  return folder_ / fmt::format("{}{}", document, extension);
}

void RecoveryStore::drop_offer(std::size_t index) {
  std::error_code error;
  fs::remove(offers_[index].copy, error);
  offers_.erase(offers_.begin() + static_cast<std::ptrdiff_t>(index));
}

void RecoveryStore::keep(std::uint64_t document, std::function<RecoveryCopy()> copy) {
  if (folder_.empty()) {
    if (!all_.empty()) news_->put({not_kept(all_, "cannot be made, or not be written to")});
    return;
  }
  const fs::path file = copy_of(document);
  chores_->post(file.string(), Task{"a copy of unsaved work",
                                    [file, copy = std::move(copy), news = news_] {
                                      news->put(write_file_atomically(file, recovery_text(copy())));
                                    },
                                    [news = news_](const Issue& trouble) { news->put({trouble}); }});
}

void RecoveryStore::remove(std::uint64_t document) {
  if (folder_.empty()) return;
  const fs::path file = copy_of(document);
  chores_->post(file.string(), [file] {
    std::error_code error;
    fs::remove(file, error);
  });
}

std::string recovery_text(const RecoveryCopy& copy) {
  const bool with_original = copy.original.size() + copy.text.size() <= most_with_original;
  return fmt::format("format = \"{}\"\ntime_s = {}\nfile = {}\noriginal = {}\ntext = {}\n", copy_format, copy.time_s,
                     toml_text(valid_utf8(copy.file)), toml_text(with_original ? valid_utf8(copy.original) : ""),
                     toml_text(valid_utf8(copy.text)));
}

Result<RecoveryCopy> recovery_from_text(std::string_view text, const std::string& file) {
  const Result<Entry> document = read_document(text, file);
  if (!document) return document.issues();
  if (text_of(document.value(), "format") != copy_format || document.value().child("text") == nullptr) {
    Issue issue;
    issue.file = file;
    issue.what = "is no copy of unsaved work that this program knows";
    return issue;
  }
  RecoveryCopy copy{text_of(document.value(), "file"), text_of(document.value(), "original"),
                    text_of(document.value(), "text"), 0};
  const Entry* time = document.value().child("time_s");
  constexpr double latest = 1e12;
  if (time != nullptr && time->kind == Entry::Kind::whole && std::abs(time->number) < latest) {
    copy.time_s = static_cast<std::int64_t>(time->number);
  }
  return copy;
}

}  // namespace laywright
