#include "session/document.h"

#include <utility>

#include "base/readable.h"
#include "plan/plan_file.h"
#include "plan/plan_writer.h"

namespace laywright {
Document::Document(std::filesystem::path path, std::string text, PlanState state, Services services)
    : services_(std::move(services)),
      path_(std::move(path)),
      original_text_(std::move(text)),
      saved_(state),
      history_(std::move(state)),
      laying_(services_.wake, services_.chores, services_.drawn_off) {
  if (!path_.empty()) watch_.emplace(path_);
  changed();
}

Result<std::unique_ptr<Document>> Document::open(const std::filesystem::path& path, Services services) {
  // It watches from before it reads: what others write in between counts as a change.
  DiskWatch watch(path);
  Result<std::string> text = read_plan_text(path);
  if (!text) return text.issues();
  Result<PlanState> state = state_from_text(text.value(), path.string(), services.entries.get());
  if (!state) return state.issues();
  std::unique_ptr<Document> document(
      new Document(path, std::move(text).value(), std::move(state).value(), std::move(services)));
  document->watch_ = std::move(watch);
  return document;
}

Result<std::unique_ptr<Document>> Document::copy_of(const std::filesystem::path& path, Services services) {
  Result<std::string> text = read_plan_text(path);
  if (!text) return text.issues();
  Result<PlanState> state = state_from_text(text.value(), "", services.entries.get());
  if (!state) return state.issues();
  std::unique_ptr<Document> document(
      new Document({}, std::move(text).value(), std::move(state).value(), std::move(services)));
  document->copied_from_ = path;
  return document;
}

Result<std::unique_ptr<Document>> Document::begun(const std::string& text, Services services) {
  Result<PlanState> state = state_from_text(text, "", services.entries.get());
  if (!state) return state.issues();
  std::unique_ptr<Document> document(new Document({}, text, std::move(state).value(), std::move(services)));
  document->file_differs_ = true;
  return document;
}

Result<std::unique_ptr<Document>> Document::for_practice(const std::string& text, std::string title,
                                                         Services services) {
  Result<PlanState> read = state_from_text(text, "", services.entries.get());
  if (!read) return read.issues();
  PlanState state = std::move(read).value();
  state.draft.title = std::move(title);
  std::unique_ptr<Document> document(new Document({}, text, std::move(state), std::move(services)));
  document->practice_ = true;
  return document;
}

void Document::begin_again() { edit(saved_, "begin again"); }

std::string Document::title() const {
  const std::string& title = state().draft.title;
  if (title.empty() && path_.empty()) return "Untitled plan";
  return readable(title.empty() ? path_.filename().string() : title, longest_title);
}

std::string Document::name() const {
  return path_.empty() ? title() : readable(path_.filename().string(), longest_title);
}

void Document::edit(PlanState state, std::string name, std::uint64_t gesture) {
  if (same_state(state, history_.present())) return;
  history_.edit(std::move(state), std::move(name), gesture);
  changed();
}

void Document::undo() {
  if (!history_.can_undo()) return;
  history_.undo();
  changed();
}

void Document::redo() {
  if (!history_.can_redo()) return;
  history_.redo();
  changed();
}

void Document::changed() {
  ++changes_;
  issues_ = issues_in(state());
  edited_ = !same_state(state(), saved_);
  // A state from before the document got another file.
  history_.amend([&](PlanState& present) { present.draft.file = path_.string(); });
  lay_if_new();
}

void Document::lay_if_new() {
  if (!sound() || (laid_ && same_wind(*laid_, state().draft))) return;
  const Result<Plan> plan = check(state().draft);
  if (!plan) return;
  laid_ = state().draft;
  laid_revision_ = laying_.lay(plan.value(), seed_);
}

bool Document::wound_is_current() const {
  return wound_ && sound() && wound_->revision == laid_revision_ && same_wind(*laid_, state().draft);
}

void Document::set_seed(std::uint64_t seed) {
  if (seed == seed_) return;
  seed_ = seed;
  lay_again();
}

void Document::lay_again() {
  laid_.reset();
  lay_if_new();
}

bool Document::poll() {
  const bool takeup = laying_.take_takeup_news();
  WoundPtr fresh = laying_.take();
  if (!fresh) return takeup;
  wound_ = std::move(fresh);
  return true;
}

}  // namespace laywright
