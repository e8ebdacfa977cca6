// A document and its file.
#include <chrono>
#include <utility>

#include <fmt/format.h>

#include "desk/plan_edits.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"
#include "session/document.h"

namespace laywright {
namespace {

Issue error_at(const std::filesystem::path& path, std::string what) {
  Issue issue;
  issue.file = path.string();
  issue.what = std::move(what);
  return issue;
}

}  // namespace

Result<std::unique_ptr<Document>> Document::recovered(const RecoveryCopy& copy, Services services) {
  Result<PlanState> edited = state_from_text(copy.text, copy.file, services.entries.get());
  if (!edited) return edited.issues();
  Result<PlanState> before = state_from_text(copy.original, copy.file, services.entries.get());
  const bool has_before = before.ok();
  PlanState start = has_before ? std::move(before).value() : edited.value();
  std::unique_ptr<Document> document(
      new Document(copy.file, has_before ? copy.original : copy.text, std::move(start), std::move(services)));
  document->edit(std::move(edited).value(), "recovered work");
  document->file_differs_ = !has_before;
  // Others may have saved since the copy was kept.
  if (has_before && !copy.file.empty()) {
    const Result<std::string> now = read_plan_text(copy.file);
    if (!now) document->file_differs_ = true;  // it is here alone
    if (now && now.value() != copy.original) document->watch_ = DiskWatch::of_changed(copy.file);
  }
  return document;
}

Issues Document::why_not_saved() const {
  for (const Issue& issue : state().reading) {
    if (state().unread.count(issue.key) == 0) continue;
    return {error_at(path_, fmt::format("is not saved: {} {}; mend that first, or undo it", issue.key, issue.what))};
  }
  const Issues unknown = unknown_in(state());
  if (unknown.empty()) return {};
  return {error_at(path_, fmt::format("is not saved: it has something that this program does not know ({}); mend it "
                                      "in the file, or leave it out with the command \"Leave out unknown keys\"",
                                      unknown.front().key))};
}

Issues Document::save() {
  if (path_.empty()) return {error_at(path_, "has no file yet; choose one with \"Save as\"")};
  if (watch_ && watch_->look_now() == OnDisk::changed) {
    return {error_at(path_,
                     "is not saved: the file was changed by somebody else since it was opened; revert to see "
                     "their version, keep yours to replace it, or save yours under another name")};
  }
  return save_as(path_);
}

Issues Document::save_as(const std::filesystem::path& path) {
  if (Issues issues = why_not_saved(); !issues.empty()) return issues;
  Result<std::string> text = save_plan(path, original_text_, saved_.draft, state().draft);
  if (!text) return text.issues();
  path_ = path;
  copied_from_.clear();
  watch_.emplace(path_);
  original_text_ = std::move(text).value();
  // Values now stand at other lines.
  Result<PlanState> read = state_from_text(original_text_, path_.string(), services_.entries.get());
  if (read.ok()) {
    history_.amend([&](PlanState& present) {
      present.draft.origins = read.value().draft.origins;
      present.draft.file = path_.string();
    });
  }
  saved_ = state();
  file_differs_ = false;
  changed();
  return {};
}

Issues Document::revert() {
  if (path_.empty()) return {error_at(path_, "has no file to go back to; undo instead")};
  DiskWatch watch(path_);  // from before it is read
  Result<std::string> text = read_plan_text(path_);
  if (!text) return text.issues();
  Result<PlanState> read = state_from_text(text.value(), path_.string());
  if (!read) return read.issues();
  watch_ = std::move(watch);
  original_text_ = std::move(text).value();
  saved_ = std::move(read).value();
  file_differs_ = false;
  if (same_state(saved_, state())) {
    changed();
  } else {
    edit(saved_, "revert to the file");
  }
  return {};
}

void Document::keep_mine() {
  if (path_.empty() || on_disk() == OnDisk::same) return;
  watch_.emplace(path_);
  file_differs_ = true;
}

void Document::look_at_disk() {
  if (watch_) watch_->look(*services_.chores, services_.wake);
}

std::function<RecoveryCopy()> Document::recovery_copy() const {
  const auto now = std::chrono::system_clock::now().time_since_epoch();
  const std::int64_t time_s = std::chrono::duration_cast<std::chrono::seconds>(now).count();
  return [file = path_.string(), original = original_text_, before = saved_.draft, after = state().draft, time_s] {
    return RecoveryCopy{file, original, write_plan(original, before, after), time_s};
  };
}

}  // namespace laywright
