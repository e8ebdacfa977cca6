// What a workbench does by itself.
#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include "scene/colour_range.h"
#include "scene/node_value.h"
#include "session/advice.h"
#include "session/workbench.h"

namespace laywright {
namespace {

using Seconds = std::chrono::duration<double>;

// After the last edit, and after the first that is not kept yet: whoever types on and on has a copy, too.
constexpr double keep_copy_after_s = 1.0;
constexpr double look_at_files_every_s = 1.0;
constexpr double keep_settings_every_s = 2.0;
constexpr double progress_every_s = 0.1;
constexpr double frame_s = 1.0 / 60.0;
// It moves slowly: more would only take time from whoever paints it.
constexpr double shown_frame_s = 1.0 / 30.0;
// A window that was held up does not make the scrubber leap.
constexpr double longest_step_s = 0.25;

bool is_due(const std::optional<Workbench::Clock::time_point>& last, Workbench::Clock::time_point now,
            double every) {
  return !last || Seconds(now - *last).count() >= every;
}

}  // namespace

bool Workbench::poll(Clock::time_point now) {
  bool changed = take_builds();
  changed |= mind_lesson();
  changed |= take_advice();
  changed |= judge_over_draws();
  changed |= beginning_.poll();
  changed |= records_.poll(question_ == cmd::Question::records, now);
  changed |= mind_order();
  changed |= play(now);
  changed |= fly(now);
  changed |= mind_files();
  changed |= show_on(now);
  changed |= watch_files(now);
  changed |= tell_what_is_not_kept();
  changed |= drop_stale_refusals();
  changed |= span_colours();
  keep_copies(now);
  keep_settings(now);
  return changed;
}

bool Workbench::take_builds() {
  bool taken = false;
  for (Desk& desk : desks_) {
    const WoundPtr before = desk.document->wound();
    if (!desk.document->poll()) continue;
    taken = true;
    if (desk.document->wound() == before) continue;  // it has got its machine's side
    const Wound& wound = *desk.document->wound();
    desk.stage = carried_over(std::move(desk.stage), before.get(), wound);
    if (comparison_ && !comparison_->pinned && comparison_->document == desk.id) {
      comparison_->stage = carried_over(std::move(comparison_->stage), before.get(), wound);
    }
    if (desk.fitted) continue;
    desk.stage.view.camera = fit_camera(wound.plan(), desk.stage.view);
    desk.fitted = true;
  }
  return taken;
}

// Two builds side by side are coloured over one range. It is of both winds to their ends, so that it stays while they play.
bool Workbench::span_colours() {
  const WoundPtr own = wound(), other = other_wound();
  Desk* const desk = active_desk();
  if (desk == nullptr) return false;
  const bool both = own && other && own != other;
  View whole = with_nothing_away(desk->stage.view);
  whole.until_turn.reset();
  const ColoursKey key{both ? own : nullptr, both ? other : nullptr, whole.colouring, whole.units};
  if (!(key == colours_key_) || (!colours_range_ && payoff_way(whole.colouring))) {
    colours_key_ = key;
    colours_range_ = both ? common_range(own->source, other->source, whole) : std::nullopt;
  }
  const bool changed = desk->stage.view.range != colours_range_;
  desk->stage.view.range = colours_range_;
  if (comparison_) comparison_->stage.view.range = colours_range_;
  return changed;
}

bool Workbench::take_advice() {
  bool taken = false;
  for (Desk& desk : desks_) {
    const bool searching = desk.advice->status(AdviceKind::better).busy;
    if (!desk.advice->poll()) continue;
    taken = true;
    const bool found = searching && !desk.advice->status(AdviceKind::better).busy;
    if (!found || question_ == cmd::Question::better_settings) continue;
    tell(Severity::warning,
         fmt::format("The search for better settings of \"{}\" has ended: Ctrl+B shows what it found.",
                     desk.document->title()));
  }
  return taken;
}

// A plan that states scatter is worth what its worst wind is: nobody has to know that to be told so. Once for a build: who
// stops it does not want it.
bool Workbench::judge_over_draws() {
  if (lesson_) return false;
  bool asked = false;
  for (Desk& desk : desks_) {
    const WoundPtr& wound = desk.document->wound();
    const bool due = desk.document->laid_in_full() && wound->verdict() && states_scatter(wound->plan().draft());
    if (!due) {
      // Of a plan that is no longer this one: what is laid now comes first.
      const WoundPtr before = desk.judged.lock();
      if (before && before != wound) {
        desk.advice->stop(AdviceKind::draws);
        desk.judged.reset();
      }
      continue;
    }
    if (desk.judged.lock() == wound) continue;
    desk.judged = wound;
    desk.advice->ask_draws(wound, desk.document->seed());
    asked = true;
  }
  return asked;
}

bool Workbench::play(Clock::time_point now) {
  const double seconds = played_at_ ? std::clamp(Seconds(now - *played_at_).count(), 0.0, longest_step_s) : 0.0;
  bool plays = false;
  const auto go_on = [&](Stage& stage, const WoundPtr& shown) {
    if (!shown || !stage.playback.playing) return;
    plays = true;
    if (seconds > 0.0) stage = with_playback(std::move(stage), played(stage.playback, *shown, seconds), *shown);
  };
  if (Desk* desk = active_desk()) go_on(desk->stage, wound());
  if (comparison_ && !comparison_->linked) go_on(comparison_->stage, other_wound());
  played_at_.reset();
  if (plays) played_at_ = now;
  return plays;
}

std::vector<Stage*> Workbench::stages() {
  std::vector<Stage*> all;
  for (Desk& desk : desks_) all.push_back(&desk.stage);
  if (comparison_) all.push_back(&comparison_->stage);
  return all;
}

bool Workbench::fly(Clock::time_point now) {
  bool flies = false;
  for (Stage* stage : stages()) {
    if (!stage->flight) continue;
    *stage = flown_on(std::move(*stage), now, options_.flight_s);
    flies = true;
  }
  return flies;
}

bool Workbench::mind_files() {
  bool written = false;
  const auto mind = [&](FileWriter& writer, cmd::Question where) {
    if (!writer.poll()) return;
    written = true;
    // Where the file is no longer looked at, a failure is told as all others are.
    if (question_ == where || writer.saving()->outcome->empty()) return;
    tell_failure(fmt::format("{} was not written.", writer.saving()->path), *writer.saving()->outcome);
  };
  mind(sheet_writer_, cmd::Question::setup_sheet);
  mind(page_writer_, cmd::Question::share_page);
  return written;
}

bool Workbench::mind_order() {
  const bool laid = order_.status().busy, written = order_.is_writing();
  if (!order_.poll()) return false;
  const bool seen = question_ == cmd::Question::order || question_ == cmd::Question::order_folder;
  if (seen) return true;
  const std::string name = std::filesystem::path(order_.file()).filename().string();
  if (laid && !order_.status().busy)
    tell(Severity::warning,
         fmt::format("The order {} {}.", name,
                     order_.can_be_written() ? "has been laid: Ctrl+Shift+O shows what comes of it"
                                             : "cannot be laid as it stands: Ctrl+Shift+O shows why"));
  if (written && !order_.is_writing() && !order_.saving()->outcome->empty())
    tell_failure(fmt::format("The files of the order {} were not written.", name), *order_.saving()->outcome);
  return true;
}

bool Workbench::show_on(Clock::time_point now) {
  if (showing_ && !wound()) showing_.reset();  // its plan was closed
  if (!showing_ || showing_->paused) {
    shown_at_.reset();
    return false;
  }
  if (shown_at_) *showing_ = shown_on(*showing_, std::clamp(Seconds(now - *shown_at_).count(), 0.0, longest_step_s));
  shown_at_ = now;
  return true;
}

bool Workbench::watch_files(Clock::time_point now) {
  bool told = false;
  for (Desk& desk : desks_) {
    const OnDisk seen = desk.document->on_disk();
    if (seen == desk.told_on_disk) continue;
    desk.told_on_disk = seen;
    if (seen == OnDisk::gone) desk.changed_at = now;  // a copy is due: the plan is here alone
    tell_of_file(desk);
    told = true;
  }
  if (!is_due(watched_at_, now, look_at_files_every_s)) return told;
  watched_at_ = now;
  for (Desk& desk : desks_) desk.document->look_at_disk();
  return told;
}

void Workbench::tell_of_file(const Desk& desk) {
  const std::string name = desk.document->path().filename().string();
  if (desk.told_on_disk == OnDisk::changed) {
    tell(Severity::warning, fmt::format("{} was changed by another program. Revert to see its version (yours comes "
                                        "back by undo), or keep yours to replace it when you save.",
                                        name));
  } else if (desk.told_on_disk == OnDisk::gone) {
    tell(Severity::warning, fmt::format("{} is no longer there. Save to write it anew.", name));
  }
}

void Workbench::note_change(Desk& desk, Clock::time_point now) {
  if (desk.document->changes() != desk.kept_changes && !desk.changed_at) desk.changed_at = now;
}

void Workbench::keep_copies(Clock::time_point now) {
  for (Desk& desk : desks_) {
    if (desk.changed_at && is_due(desk.changed_at, now, keep_copy_after_s)) keep_copy(desk);
  }
}

void Workbench::keep_copy(Desk& desk) {
  desk.changed_at.reset();
  desk.kept_changes = desk.document->changes();
  if (desk.document->dirty()) {
    recovery_->keep(desk.id, desk.document->recovery_copy());
  } else {
    recovery_->remove(desk.id);
  }
}

void Workbench::keep_unsaved() {
  for (Desk& desk : desks_) {
    if (desk.changed_at) keep_copy(desk);
  }
}

bool Workbench::tell_what_is_not_kept() {
  const auto told = [&](KeepingNews& news, const char* sentence) {
    const std::optional<Issues> trouble = news.take();
    if (!trouble) return false;
    const Issue& issue = trouble->front();
    const std::string why = issue.file.empty() ? issue.what : fmt::format("{} {}", issue.file, issue.what);
    tell(Severity::warning, fmt::format(fmt::runtime(sentence), why));
    return true;
  };
  const bool copies =
      told(*copies_news_,
           "No copy of unsaved work is kept, should the program end unasked: {}. Save often; make room "
           "there, or allow writing.");
  const bool settings =
      told(*settings_news_,
           "Settings are not kept for the next start: {}. All else works; make room there, or allow "
           "writing.");
  return copies || settings;
}

void Workbench::keep_settings(Clock::time_point now) {
  if (!is_due(settings_at_, now, keep_settings_every_s)) return;
  settings_at_ = now;
  if (same_settings(settings_, written_settings_)) return;
  written_settings_ = settings_;
  errands_->queue()->post("settings", Task{"the settings",
                                           [folder = options_.folders.config, settings = settings_,
                                            news = settings_news_] { news->put(save_settings(folder, settings)); },
                                           [news = settings_news_](const Issue& trouble) { news->put({trouble}); }});
}

bool Workbench::shows_progress() const {
  return order_.status().busy || order_.is_writing() || records_.keeping() || records_.fitting().busy ||
         beginning_.status().busy || sheet_writer_.busy() || page_writer_.busy() ||
         std::any_of(desks_.begin(), desks_.end(),
                     [](const Desk& desk) { return desk.document->laying().busy || desk.advice->busy(); });
}

std::optional<double> Workbench::seconds_to_next_poll() const {
  const bool progress = shows_progress();
  if (desks_.empty() && question_ != cmd::Question::records && !progress) return std::nullopt;
  double soonest = progress ? progress_every_s : look_at_files_every_s;
  if (desks_.empty()) return soonest;
  const auto moves = [](const Stage& stage, bool laid) { return stage.flight || (laid && stage.playback.playing); };
  bool any = moves(active()->stage, wound() != nullptr);
  if (comparison_ && !comparison_->linked) any = any || moves(comparison_->stage, other_wound() != nullptr);
  if (any) soonest = std::min(soonest, frame_s);
  if (showing_ && !showing_->paused) soonest = std::min(soonest, shown_frame_s);
  return soonest;
}

}  // namespace laywright
