// An open plan: its file, its text, what a person has made of it, and what comes out when it is laid.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "desk/history.h"
#include "desk/plan_state.h"
#include "session/disk_watch.h"
#include "session/laying.h"

namespace laywright {

// Work that was not saved: enough to go on with it.
struct RecoveryCopy {
  std::string file;         // of the plan; empty if it never had one
  std::string original;     // the text that was opened or last saved
  std::string text;         // as it would have been saved
  std::int64_t time_s = 0;  // when, since 1970
};

class Document {
 public:
  // What a document needs of its surroundings.
  struct Services {
    std::function<void()> wake;  // called from other threads when poll() has something to do
    std::shared_ptr<ErrandQueue> chores;
    std::shared_ptr<const EntrySource> entries = nullptr;  // of catalogues that plans name; none: they cannot
    std::optional<DrawOff> drawn_off = std::nullopt;       // known of each whole build before it is shown
  };

  // Errors: as read_plan_text, and a text that has not even the shape of a plan. A plan with other errors is
  // opened: they stand beside its fields.
  [[nodiscard]] static Result<std::unique_ptr<Document>> open(const std::filesystem::path& path, Services services);
  // The same without its file: a copy, for which a name is still to be chosen.
  [[nodiscard]] static Result<std::unique_ptr<Document>> copy_of(const std::filesystem::path& path,
                                                                 Services services);
  // A new one: it has no file, and asks to be saved. Errors: its text is no plan.
  [[nodiscard]] static Result<std::unique_ptr<Document>> begun(const std::string& text, Services services);
  // Errors: its text is no plan.
  [[nodiscard]] static Result<std::unique_ptr<Document>> recovered(const RecoveryCopy& copy, Services services);
  // For practice: it has no file and never asks to be saved. Errors: its text is no plan.
  [[nodiscard]] static Result<std::unique_ptr<Document>> for_practice(const std::string& text, std::string title,
                                                                      Services services);

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  // The plan's title; the name of its file when it has none.
  [[nodiscard]] std::string title() const;
  // The name of its file, by which several plans are told apart; its title while it has none.
  [[nodiscard]] std::string name() const;
  // What it is a copy of, until it gets a file of its own; empty: of nothing.
  [[nodiscard]] const std::filesystem::path& copied_from() const { return copied_from_; }

  // --- the plan as edited
  [[nodiscard]] const PlanState& state() const { return history_.present(); }
  [[nodiscard]] const History<PlanState>& history() const { return history_; }
  [[nodiscard]] const Issues& issues() const { return issues_; }
  [[nodiscard]] bool sound() const { return !has_error(issues_); }
  // True if closing would lose something: also where the file is gone, and the plan is here alone.
  [[nodiscard]] bool dirty() const { return !practice_ && (edited_ || file_differs_ || on_disk() == OnDisk::gone); }
  [[nodiscard]] bool is_practice() const { return practice_; }
  // The plan says what it said when it was opened, or last saved.
  [[nodiscard]] bool as_given() const { return !edited_; }
  // Back to that, as a step that can be undone.
  void begin_again();
  // Counts the changes of the state.
  [[nodiscard]] std::uint64_t changes() const { return changes_; }

  // One step of the history; see History::edit. Nothing happens if the state is the same.
  void edit(PlanState state, std::string name, std::uint64_t gesture = 0);
  void undo();  // nothing, where there is nothing to undo
  void redo();

  // --- its file
  // Errors: it cannot be written; it holds values that cannot be read, or keys that are not known; it was changed
  // by others since it was read.
  [[nodiscard]] Issues save();
  // The same to another file, which the document then is. An existing file is replaced.
  [[nodiscard]] Issues save_as(const std::filesystem::path& path);
  // Back to what the file says now, as a step that can be undone.
  [[nodiscard]] Issues revert();
  [[nodiscard]] OnDisk on_disk() const { return watch_ ? watch_->seen() : OnDisk::same; }
  // Lets others' change of the file be: the next save replaces it.
  void keep_mine();
  void look_at_disk();

  // Makes the copy of the work as it is now; may be called on another thread, at any time.
  [[nodiscard]] std::function<RecoveryCopy()> recovery_copy() const;

  // --- what comes out
  // The newest build; null until the first is laid.
  [[nodiscard]] const WoundPtr& wound() const { return wound_; }
  // True if the build is of the plan as it stands (and not of the last sound one).
  [[nodiscard]] bool wound_is_current() const;
  // The same, and the whole wind with all its stations.
  [[nodiscard]] bool laid_in_full() const { return wound_ && wound_->pass.full() && wound_is_current(); }
  [[nodiscard]] LayingStatus laying() const { return laying_.status(); }
  [[nodiscard]] std::uint64_t seed() const { return seed_; }
  void set_seed(std::uint64_t seed);
  void lay_again();
  void stop_laying() { laying_.stop(); }
  // Takes a new build, or the machine's side of one, if there is something new: true.
  bool poll();

 private:
  Document(std::filesystem::path path, std::string text, PlanState state, Services services);

  void changed();
  void lay_if_new();
  [[nodiscard]] Issues why_not_saved() const;

  Services services_;
  std::filesystem::path path_, copied_from_;
  std::string original_text_;
  PlanState saved_;  // what original_text_ says
  History<PlanState> history_;
  Issues issues_;
  bool practice_ = false;
  bool edited_ = false;        // the state is not that of saved_
  bool file_differs_ = false;  // nor does the file say what saved_ is
  std::uint64_t changes_ = 0;
  std::optional<DiskWatch> watch_;

  std::uint64_t seed_ = 1;
  std::optional<PlanDraft> laid_;  // the newest that was given to laying, sound
  std::uint64_t laid_revision_ = 0;
  WoundPtr wound_;
  Laying laying_;
};

}  // namespace laywright
