// All that the window does, without the window: open plans and their builds, commands, undo, playback, background
// laying, what is remembered. One thread uses it, the window's; nothing it does waits for laying or, but for opening
// and saving, for the disk. Several can live in one process.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/comparison.h"
#include "desk/field_rows.h"
#include "desk/stage.h"
#include "session/advice_request.h"
#include "session/command.h"
#include "session/document.h"
#include "session/folders.h"
#include "session/lesson_run.h"
#include "session/open_order.h"
#include "session/page_saving.h"
#include "session/plan_beginning.h"
#include "session/question.h"
#include "session/records_desk.h"
#include "session/recovery.h"
#include "session/settings.h"
#include "session/sheet_saving.h"
#include "session/showing.h"
#include "session/typed_readings.h"
#include "store/catalogues.h"

namespace laywright {

class Advice;  // advice.h

// Something to tell the person, until they have read it.
struct Notice {
  Severity severity = Severity::error;
  std::string text;  // what happened
  Issues issues;     // in detail
  // Of a refusal: what was refused. It is told as long as it would be refused with the same words.
  std::optional<Command> refused = std::nullopt;
};

// A document and how it is looked at.
struct Desk {
  std::uint64_t id = 0;
  std::unique_ptr<Document> document;  // never null
  std::unique_ptr<Advice> advice;      // never null
  TypedReadings readings;              // of the spool that is being wound
  Stage stage;
  bool fitted = false;                 // the camera has seen the whole spool once
  OnDisk told_on_disk = OnDisk::same;  // what the person was told of the file
  std::weak_ptr<const Wound> judged;   // the last that other draws were laid for unasked

  // Of the recovery copy.
  std::uint64_t kept_changes = 0;
  std::optional<std::chrono::steady_clock::time_point> changed_at;
};

// What a build is compared with.
struct Comparison {
  std::string name;            // for a heading
  WoundPtr pinned;             // kept as it was; null: another document's
  std::uint64_t document = 0;  // id of a desk, where nothing is pinned
  bool linked = true;          // one camera and one scrubber for both
  Stage stage;                 // of the other side, when not linked
  bool in_hand = false;        // not linked: commands of view, scrubber, pick and finding go to it
  bool on_right = false;       // where it stands beside the active document's picture
};

class Workbench {
 public:
  using Clock = std::chrono::steady_clock;

  struct Options {
    Folders folders;                             // empty paths: nothing is remembered there
    std::string sample;                          // plan that a first start opens; may be empty
    std::filesystem::path lessons;               // folder of those that come with the program; may be empty
    std::shared_ptr<const EntrySource> entries;  // of catalogues that plans name; may be null
    std::function<Shelf()> shelf;                // all that they have; may be empty
    std::function<void()> wake;  // called from other threads when poll() has something to do; may be empty
    MakePage make_page;          // empty: the program was built without the share page
    WindPicture wind_picture;    // for sheets of an order, on other threads; empty: they have none
    double flight_s = 0.4;       // that a camera takes to a finding, where the settings let it fly
  };

  explicit Workbench(Options options);
  // Stops laying and remembers settings. Unsaved work stays for the next start.
  ~Workbench();
  Workbench(const Workbench&) = delete;
  Workbench& operator=(const Workbench&) = delete;

  // Opens these plans, the first one foremost; without any the newest of the recent ones, or at a first start the
  // sample.
  void start(const std::vector<std::string>& plans);

  // Does it. False, and a notice that says why, when it cannot be done.
  bool apply(const Command& command);
  // Why it cannot be done now, as a sentence; empty when it can.
  [[nodiscard]] std::string why_not(const Command& command) const;

  // To be called when `wake` was, and after seconds_to_next_poll(): takes what was laid, moves the scrubber, keeps
  // copies of unsaved work. True when what is shown has changed.
  bool poll(Clock::time_point now = Clock::now());
  // None: nothing happens by itself.
  [[nodiscard]] std::optional<double> seconds_to_next_poll() const;
  // Something is under way of which the share that is done is shown.
  [[nodiscard]] bool shows_progress() const;

  [[nodiscard]] const std::vector<Desk>& documents() const { return desks_; }
  // Of the one that is shown; none when no plan is open.
  [[nodiscard]] std::optional<std::size_t> active_index() const;
  [[nodiscard]] const Desk* active() const;  // null when no plan is open
  [[nodiscard]] WoundPtr wound() const;      // of the active one; null until something is laid

  // Fields of the active plan, as a form; empty when no plan is open. Valid until the next call.
  [[nodiscard]] const std::vector<FieldRow>& rows() const;

  // What to do, in words, when there is no picture, or one that is not of the plan as it stands; else empty.
  [[nodiscard]] std::string hint() const;
  // That the picture shows a build with few stations, for a while; else empty.
  [[nodiscard]] std::string quick_look() const;

  [[nodiscard]] const std::optional<Comparison>& comparison() const { return comparison_; }
  [[nodiscard]] WoundPtr other_wound() const;  // the other side; null when nothing is compared or laid
  [[nodiscard]] Stage other_stage() const;
  // The picture that commands of view, scrubber, pick and finding go to: the active document's, or of two that are not
  // linked the other one when it was taken in hand.
  [[nodiscard]] bool other_in_hand() const { return comparison_ && !comparison_->linked && comparison_->in_hand; }
  [[nodiscard]] const Stage* stage_in_hand() const;  // null when no plan is open
  [[nodiscard]] WoundPtr wound_in_hand() const;      // null until something is laid
  // From the other side to the active one; none unless both are laid.
  [[nodiscard]] std::optional<DifferenceTable> difference() const;

  // Those that come with the program; read when first asked for.
  [[nodiscard]] const LessonShelf& lessons() const;
  [[nodiscard]] const std::optional<LessonRun>& lesson() const { return lesson_; }
  // The builds of the lesson's two plans as they stand; null until something is laid.
  [[nodiscard]] std::array<WoundPtr, 2> lesson_wounds() const;
  // What came of trying; none where the step has nothing to try, or before the lesson's own builds are laid.
  [[nodiscard]] std::optional<Tried> tried() const;

  // A plan that is begun anew.
  [[nodiscard]] const PlanBeginning& beginning() const { return beginning_; }

  // What was wound and measured, while somebody looks at it.
  [[nodiscard]] const RecordsDesk& records() const { return records_; }
  // The order over spools that was opened last.
  [[nodiscard]] const OpenOrder& order() const { return order_; }

  // While the active document's wind is shown to others.
  [[nodiscard]] const std::optional<Showing>& showing() const { return showing_; }

  // Of the wind in hand: over several draws where it was judged so as it stands; null until there is one.
  [[nodiscard]] VerdictPtr verdict_in_hand() const;

  // How the active plan stands to an answer of its advice; none where there is no answer.
  [[nodiscard]] std::optional<Standing> standing(AdviceKind kind) const;

  [[nodiscard]] const std::vector<Notice>& notices() const { return notices_; }
  [[nodiscard]] const std::vector<RecoveryOffer>& recovery_offers() const { return recovery_->offers(); }
  // What the window must ask the person.
  [[nodiscard]] const std::optional<cmd::Question>& question() const { return question_; }
  [[nodiscard]] bool any_unsaved() const;
  // The last saving of a set-up sheet, since the window asked to see one; none: there was none.
  [[nodiscard]] std::optional<FileSaving> sheet_saving() const { return sheet_writer_.saving(); }

  // The last saving of a share page, since the window asked for one; none: there was none.
  [[nodiscard]] std::optional<FileSaving> page_saving() const { return page_writer_.saving(); }

  [[nodiscard]] const Options& options() const { return options_; }
  [[nodiscard]] const Settings& settings() const { return settings_; }
  void set_window(const WindowPlace& window) { settings_.window = window; }
  void set_layout(std::string layout) { settings_.layout = std::move(layout); }

  // Puts a message before the person; one that stands there already comes to the end.
  void tell(Severity severity, std::string text, Issues issues = {});
  // Those that would not be refused any more, or with other words; true when there were any.
  bool drop_stale_refusals();
  // Has copies of unsaved work written now: something has gone wrong, and worse may follow.
  void keep_unsaved();

 private:
  friend struct BenchInside;

  [[nodiscard]] Desk* active_desk();
  [[nodiscard]] const Desk* desk_of(std::uint64_t id) const;
  void add_desk(std::unique_ptr<Document> document);
  void close(std::size_t index);
  bool open(const std::string& path);
  bool recover(std::size_t offer);
  bool open_begun(const std::string& text, const char* failed);  // without a file; false: it was told
  bool open_proposed();
  void open_order(const std::string& file);  // what is wrong with it is told beside it
  bool open_spool_plan(std::size_t spool);
  bool open_sample();  // a copy of it, without a file; the one that is open already comes to the front
  void tell_failure(const std::string& text, const Issues& issues);
  void remember_file(const std::string& path);
  void note_change(Desk& desk, Clock::time_point now);
  [[nodiscard]] Document::Services services();

  bool open_lesson(const std::string& file);
  void go_to_step(std::size_t step);
  void show_step_again();
  void look_from_afar(bool afar);
  void arrange_lesson();
  void close_lesson();
  bool mind_lesson();

  bool take_builds();
  bool take_advice();
  bool judge_over_draws();
  bool span_colours();
  bool play(Clock::time_point now);
  bool fly(Clock::time_point now);
  bool show_on(Clock::time_point now);
  // All that are shown or could be: of the documents, and the other side's own.
  [[nodiscard]] std::vector<Stage*> stages();
  void write_sheet(const std::string& path, std::shared_ptr<const std::vector<Drawing>> pages, int page);
  Issues write_page(const std::string& path);
  bool mind_files();
  bool mind_order();
  bool watch_files(Clock::time_point now);
  void tell_of_file(const Desk& desk);
  void keep_copies(Clock::time_point now);
  void keep_copy(Desk& desk);
  void keep_settings(Clock::time_point now);
  bool tell_what_is_not_kept();

  Options options_;
  std::unique_ptr<Errands> errands_;
  std::shared_ptr<KeepingNews> copies_news_, settings_news_;
  std::unique_ptr<RecoveryStore> recovery_;
  Settings settings_, written_settings_;
  bool first_start_ = false;

  std::vector<Desk> desks_;
  std::size_t active_ = 0;
  std::uint64_t last_id_ = 0;
  std::optional<Comparison> comparison_;
  std::optional<LessonRun> lesson_;
  struct BeforeLesson {
    std::uint64_t desk = 0;  // that was active; 0: none
    std::optional<Comparison> comparison;
    View view;  // of the settings
  };
  BeforeLesson before_lesson_;
  mutable std::optional<LessonShelf> lessons_;
  std::optional<Showing> showing_;
  std::vector<Notice> notices_;
  std::optional<cmd::Question> question_;
  PlanBeginning beginning_{[this] { options_.wake(); }};
  RecordsDesk records_{[this] { options_.wake(); }};
  OpenOrder order_{[this] { options_.wake(); }, options_.wind_picture};
  FileWriter sheet_writer_{"the set-up sheet"}, page_writer_{"the share page"};

  std::optional<Clock::time_point> played_at_, shown_at_, watched_at_, settings_at_;

  struct RowsKey {
    std::uint64_t desk = 0, changes = 0;
    Units units = Units::metric;
    [[nodiscard]] bool operator==(const RowsKey&) const = default;
  };
  struct ColoursKey {
    WoundPtr own, other;  // null: nothing is compared
    Colouring colouring = Colouring::layer;
    Units units = Units::metric;
    [[nodiscard]] bool operator==(const ColoursKey&) const = default;
  };
  ColoursKey colours_key_;
  std::optional<ColourRange> colours_range_;

  mutable RowsKey rows_key_;
  mutable std::vector<FieldRow> rows_;
};

}  // namespace laywright
