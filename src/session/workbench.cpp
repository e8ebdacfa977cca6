#include "session/workbench.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "session/bench_inside.h"
#include "session/file_commands.h"

namespace laywright {
namespace {

constexpr std::size_t most_notices = 20;

std::string absolute(const std::string& path) {
  std::error_code error;
  const std::filesystem::path full = std::filesystem::weakly_canonical(path, error);
  return error ? path : full.string();
}

}  // namespace

Workbench::Workbench(Options options) : options_(std::move(options)), errands_(std::make_unique<Errands>()) {
  if (!options_.wake) options_.wake = [] {};
  LoadedSettings loaded = load_settings(options_.folders.config);
  settings_ = written_settings_ = std::move(loaded.settings);
  first_start_ = loaded.first_start;
  if (!loaded.notes.empty()) {
    tell(Severity::warning, "Some settings were not understood and are as usual again.", std::move(loaded.notes));
  }
  copies_news_ = std::make_shared<KeepingNews>(options_.wake);
  settings_news_ = std::make_shared<KeepingNews>(options_.wake);
  recovery_ = std::make_unique<RecoveryStore>(options_.folders.state, errands_->queue(), copies_news_);
}

Workbench::~Workbench() {
  // First what may still post errands, then the errands, then the folders that they write to.
  const auto now = Clock::now();
  for (Desk& desk : desks_) {
    keep_copy(desk);  // that of before may have failed
  }
  settings_at_.reset();
  keep_settings(now);
  comparison_.reset();
  desks_.clear();
  errands_.reset();
}

void Workbench::start(const std::vector<std::string>& plans) {
  if (!recovery_->offers().empty()) {
    tell(Severity::warning,
         "The program did not end properly last time. Unsaved work was kept: open it, or drop it.");
  }
  if (!plans.empty()) {
    for (const std::string& plan : plans) open(plan);
    if (plans.size() > 1 && !desks_.empty()) apply(cmd::activate(0));
    return;
  }
  for (const std::string& recent : std::vector<std::string>(settings_.recent)) {
    std::error_code error;
    if (!first_start_ && std::filesystem::exists(recent, error) && open(recent)) return;
  }
  if (!options_.sample.empty()) open_sample();
}

bool Workbench::apply(const Command& command) {
  if (std::string reason = why_not(command); !reason.empty()) {
    tell(Severity::warning, std::move(reason));
    notices_.back().refused = command;
    return false;
  }
  const bool done = command.act(BenchInside{*this});
  drop_stale_refusals();
  span_colours();
  if (Desk* desk = active_desk()) note_change(*desk, Clock::now());
  return done;
}

std::string Workbench::why_not(const Command& command) const { return command.why_not(*this); }

std::optional<std::size_t> Workbench::active_index() const {
  if (desks_.empty()) return std::nullopt;
  return active_;
}

Desk* Workbench::active_desk() { return desks_.empty() ? nullptr : &desks_[active_]; }
const Desk* Workbench::active() const { return desks_.empty() ? nullptr : &desks_[active_]; }

WoundPtr Workbench::wound() const { return desks_.empty() ? nullptr : desks_[active_].document->wound(); }

const Desk* Workbench::desk_of(std::uint64_t id) const {
  const auto found = std::find_if(desks_.begin(), desks_.end(), [&](const Desk& desk) { return desk.id == id; });
  return found == desks_.end() ? nullptr : &*found;
}

Document::Services Workbench::services() { return {options_.wake, errands_->queue(), options_.entries}; }

void Workbench::add_desk(std::unique_ptr<Document> document) {
  Desk desk;
  desk.id = ++last_id_;
  desk.document = std::move(document);
  desk.advice = std::make_unique<Advice>(options_.wake);
  desk.stage.view = settings_.view;
  if (const Desk* before = active()) {
    desk.stage.view.width_px = before->stage.view.width_px;
    desk.stage.view.height_px = before->stage.view.height_px;
  }
  desk.kept_changes = desk.document->changes();
  desks_.push_back(std::move(desk));
  active_ = desks_.size() - 1;
}

bool Workbench::open(const std::string& path) {
  const std::string file = absolute(path);
  if (file.ends_with(".lesson.toml")) return open_lesson(file);
  if (file.ends_with(order_ending)) {
    open_order(file);
    return true;
  }
  for (std::size_t i = 0; i < desks_.size(); ++i) {
    if (desks_[i].document->path() != file) continue;
    const std::uint64_t id = desks_[i].id;
    close_lesson();
    active_ = static_cast<std::size_t>(desk_of(id) - desks_.data());
    return true;
  }
  Result<std::unique_ptr<Document>> opened = Document::open(file, services());
  if (!opened) {
    tell_failure(fmt::format("{} could not be opened.", path), opened.issues());
    return false;
  }
  close_lesson();
  add_desk(std::move(opened).value());
  remember_file(file);
  return true;
}

bool Workbench::recover(std::size_t offer) {
  const RecoveryOffer kept = recovery_->offers()[offer];
  Result<std::unique_ptr<Document>> recovered = Document::recovered(kept.work, services());
  if (!recovered) {
    tell_failure("The unsaved work could not be read.", recovered.issues());
    return false;
  }
  close_lesson();
  add_desk(std::move(recovered).value());
  // It is kept anew before the old copy goes.
  Desk& desk = *active_desk();
  recovery_->keep(desk.id, desk.document->recovery_copy());
  desk.kept_changes = desk.document->changes();
  recovery_->drop_offer(offer);
  return true;
}

bool Workbench::open_sample() {
  const std::string file = absolute(options_.sample);
  const auto same = std::find_if(desks_.begin(), desks_.end(),
                                 [&](const Desk& desk) { return desk.document->copied_from() == file; });
  if (same != desks_.end()) {
    const std::uint64_t id = same->id;
    close_lesson();
    active_ = static_cast<std::size_t>(desk_of(id) - desks_.data());
    return true;
  }
  Result<std::unique_ptr<Document>> opened = Document::copy_of(file, services());
  if (!opened) {
    tell_failure("The sample could not be opened.", opened.issues());
    return false;
  }
  close_lesson();
  add_desk(std::move(opened).value());
  return true;
}

bool Workbench::open_begun(const std::string& text, const char* failed) {
  Result<std::unique_ptr<Document>> begun = Document::begun(text, services());
  if (!begun) {
    tell_failure(failed, begun.issues());
    return false;
  }
  question_.reset();
  close_lesson();
  add_desk(std::move(begun).value());
  return true;
}

bool Workbench::open_proposed() {
  if (!open_begun(beginning_.proposed()->text, "The proposed plan could not be opened.")) return false;
  beginning_.forget();
  return true;
}

void Workbench::open_order(const std::string& file) {
  const Catalogues none({});
  order_.open(absolute(file), options_.entries ? *options_.entries : none);
  question_ = cmd::Question::order;
}

bool Workbench::open_spool_plan(std::size_t spool) {
  if (const std::optional<std::string> file = order_.written_plan(spool)) {
    question_.reset();
    return open(*file);
  }
  return open_begun(plan_text_of(order_.laid()->batch, spool), "The plan of the spool could not be opened.");
}

void Workbench::close(std::size_t index) {
  const std::uint64_t id = desks_[index].id;
  recovery_->remove(id);
  if (comparison_ && !comparison_->pinned && comparison_->document == id) comparison_.reset();
  desks_.erase(desks_.begin() + static_cast<std::ptrdiff_t>(index));
  if (active_ > index || active_ == desks_.size()) active_ = active_ == 0 ? 0 : active_ - 1;
  if (desks_.empty()) comparison_.reset();
}

void Workbench::tell(Severity severity, std::string text, Issues issues) {
  // Said again, it need not stand there twice.
  const auto same = std::find_if(notices_.begin(), notices_.end(), [&](const Notice& n) { return n.text == text; });
  if (same != notices_.end()) notices_.erase(same);
  notices_.push_back({severity, std::move(text), std::move(issues)});
  if (notices_.size() > most_notices) notices_.erase(notices_.begin());
}

bool Workbench::drop_stale_refusals() {
  return std::erase_if(notices_, [&](const Notice& notice) {
           return notice.refused && why_not(*notice.refused) != notice.text;
         }) > 0;
}

void Workbench::tell_failure(const std::string& text, const Issues& issues) { tell(Severity::error, text, issues); }

void Workbench::remember_file(const std::string& path) {
  if (path != absolute(options_.sample)) settings_.recent = with_recent(settings_.recent, path);
}

bool Workbench::any_unsaved() const {
  return std::any_of(desks_.begin(), desks_.end(), [](const Desk& desk) { return desk.document->dirty(); });
}

const std::vector<FieldRow>& Workbench::rows() const {
  const Desk* desk = active();
  const RowsKey key =
      desk != nullptr ? RowsKey{desk->id, desk->document->changes(), desk->stage.view.units} : RowsKey{};
  if (key == rows_key_) return rows_;
  rows_key_ = key;
  rows_.clear();
  if (desk != nullptr) rows_ = field_rows(desk->document->state(), desk->document->issues(), desk->stage.view.units);
  return rows_;
}

WoundPtr Workbench::other_wound() const {
  if (!comparison_) return nullptr;
  if (comparison_->pinned) return comparison_->pinned;
  const Desk* desk = desk_of(comparison_->document);
  return desk != nullptr ? desk->document->wound() : nullptr;
}

Stage Workbench::other_stage() const {
  if (!comparison_) return {};
  const WoundPtr other = other_wound();
  const Desk* desk = active();
  if (!comparison_->linked || !other || desk == nullptr) return comparison_->stage;
  Stage stage = desk->stage;
  stage.view.chosen_finding.reset();
  if (const WoundPtr own = wound(); own && desk->stage.view.chosen_finding) {
    stage.view.chosen_finding = same_finding(*own, *desk->stage.view.chosen_finding, *other);
  }
  return with_playback(std::move(stage), desk->stage.playback, *other);
}

const Stage* Workbench::stage_in_hand() const {
  if (other_in_hand()) return &comparison_->stage;
  return desks_.empty() ? nullptr : &desks_[active_].stage;
}

WoundPtr Workbench::wound_in_hand() const { return other_in_hand() ? other_wound() : wound(); }

std::optional<DifferenceTable> Workbench::difference() const {
  const WoundPtr other = other_wound(), own = wound();
  if (!other || !own) return std::nullopt;
  return compare(*other, *own, active()->stage.view.units);
}

std::optional<Standing> Workbench::standing(AdviceKind kind) const {
  const Desk* desk = active();
  if (desk == nullptr) return std::nullopt;
  return desk->advice->standing(kind, desk->document->state().draft, desk->document->seed());
}

VerdictPtr Workbench::verdict_in_hand() const {
  const WoundPtr wound = wound_in_hand();
  if (!wound) return nullptr;
  const Desk* desk = active();
  const std::optional<Standing> draws = standing(AdviceKind::draws);
  const bool judged =
      desk != nullptr && !other_in_hand() && draws && !draws->stale && desk->document->laid_in_full();
  return judged ? desk->advice->draws()->verdict : wound->verdict();
}

}  // namespace laywright
