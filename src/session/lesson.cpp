// How a workbench takes a lesson.
#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "session/workbench.h"

namespace laywright {

const LessonShelf& Workbench::lessons() const {
  if (lessons_) return *lessons_;
  lessons_.emplace();
  const Result<std::vector<Lesson>> found = load_lessons(options_.lessons);
  lessons_->unread = found.issues();
  if (!found) return *lessons_;
  for (const Lesson& lesson : found.value()) {
    lessons_->titles.push_back({lesson.file, lesson.number, lesson.title, lesson.aim});
  }
  return *lessons_;
}

bool Workbench::open_lesson(const std::string& file) {
  Result<Lesson> loaded = load_lesson(file);
  if (!loaded) {
    tell_failure(fmt::format("{} could not be opened: there is something to mend in it.", file), loaded.issues());
    return false;
  }
  const auto lesson = std::make_shared<const Lesson>(std::move(loaded).value());
  Document::Services serves = services();
  if (lesson->draws_off()) serves.drawn_off = DrawOff::over_left;
  std::array<std::unique_ptr<Document>, 2> documents;
  for (std::size_t k = 0; k < documents.size(); ++k) {
    const LessonBuild& build = lesson->builds[k];
    Result<std::unique_ptr<Document>> made = Document::for_practice(build.plan_text, build.name, serves);
    if (!made) {
      tell_failure(fmt::format("A plan of {} cannot be laid.", file), made.issues());
      return false;
    }
    documents[k] = std::move(made).value();
  }
  close_lesson();
  before_lesson_ = {active() != nullptr ? active()->id : 0, std::exchange(comparison_, std::nullopt),
                    settings_.view};
  LessonRun run;
  run.lesson = lesson;
  run.answers.resize(lesson->steps.size());
  for (std::size_t k = 0; k < documents.size(); ++k) {
    add_desk(std::move(documents[k]));
    run.desks[k] = last_id_;
    desks_.back().stage.view.findings = desks_.back().stage.view.dimensions = false;
    desks_.back().stage.playback.wanted_mm = 0.0;  // bare until the first step shows what it will
  }
  lesson_ = std::move(run);
  arrange_lesson();
  return true;
}

// The build in hand is the active document, the other one is compared with it; the first is always on the left.
void Workbench::arrange_lesson() {
  const auto own = static_cast<std::size_t>(in_hand(lesson_->now()));
  const std::uint64_t id = lesson_->desks[own];
  const Stage stage = active()->stage;
  const auto place = std::find_if(desks_.begin(), desks_.end(), [&](const Desk& desk) { return desk.id == id; });
  active_ = static_cast<std::size_t>(place - desks_.begin());
  place->stage = stage;
  Comparison comparison;
  comparison.name = lesson_->lesson->builds[1 - own].name;
  comparison.document = lesson_->desks[1 - own];
  comparison.stage = place->stage;
  comparison.on_right = own == 0;
  comparison_ = std::move(comparison);
}

void Workbench::go_to_step(std::size_t step) {
  lesson_->step = step;
  lesson_->place.reset();
  lesson_->waits = true;
  lesson_->from_afar = false;
  for (Desk& desk : desks_) {
    if (desk.document->is_practice()) desk.document->begin_again();
  }
  arrange_lesson();
  mind_lesson();
}

void Workbench::show_step_again() {
  lesson_->waits = true;
  mind_lesson();
}

void Workbench::look_from_afar(bool afar) {
  lesson_->from_afar = afar;
  if (lesson_->waits) return;  // it will be looked at so
  Desk& desk = *active_desk();
  Shot shot = shot_again(*lesson_, std::move(desk.stage), !settings_.motion);
  desk.stage = std::move(shot.stage);
}

void Workbench::close_lesson() {
  if (!lesson_) return;
  lesson_.reset();
  comparison_.reset();
  for (std::size_t i = desks_.size(); i-- > 0;) {
    if (desks_[i].document->is_practice()) close(i);
  }
  const BeforeLesson before = std::exchange(before_lesson_, {});
  for (std::size_t i = 0; i < desks_.size(); ++i) {
    if (desks_[i].id == before.desk) active_ = i;
  }
  if (!desks_.empty()) comparison_ = before.comparison;
  // A preference that was changed while a lesson showed something else has taken that along.
  const auto put_back = [&](View& view) {
    view.colouring = before.view.colouring;
    view.findings = before.view.findings;
    view.dimensions = before.view.dimensions;
    view.guide = before.view.guide;
    view.flanges_see_through = before.view.flanges_see_through;
  };
  put_back(settings_.view);
  for (Stage* stage : stages()) put_back(stage->view);
}

bool Workbench::mind_lesson() {
  if (!lesson_) return false;
  bool ready = true;
  for (std::size_t k = 0; k < lesson_->desks.size(); ++k) {
    const Document& document = *desk_of(lesson_->desks[k])->document;
    const bool own = document.as_given() && document.laid_in_full();
    if (own) lesson_->as_given[k] = document.wound();
    ready = ready && own;
  }
  if (!ready || !lesson_->waits) return false;
  lesson_->waits = false;
  Desk& desk = *active_desk();
  Shot shot = shot_of_step(*lesson_, std::move(desk.stage), !settings_.motion);
  desk.stage = std::move(shot.stage);
  lesson_->place = shot.place;
  return true;
}

std::array<WoundPtr, 2> Workbench::lesson_wounds() const {
  std::array<WoundPtr, 2> wounds;
  if (!lesson_) return wounds;
  for (std::size_t k = 0; k < wounds.size(); ++k) wounds[k] = desk_of(lesson_->desks[k])->document->wound();
  return wounds;
}

std::optional<Tried> Workbench::tried() const {
  if (!lesson_ || !lesson_->now().attempt || !lesson_->as_given[0] || !lesson_->as_given[1]) return std::nullopt;
  const Attempt& attempt = *lesson_->now().attempt;
  const auto own = static_cast<std::size_t>(attempt.in);
  const std::array<WoundPtr, 2> wounds = lesson_wounds();
  const bool draws_off = lesson_->lesson->draws_off();
  const auto figure = [&](const std::array<WoundPtr, 2>& of) {
    return figure_of(attempt.figure, laid_pair(of, draws_off)[own]);
  };
  Tried tried;
  tried.before = figure(lesson_->as_given);
  // The beginning of a wind has other figures than the whole.
  if (wounds[own] && wounds[own]->pass.whole()) tried.now = figure(wounds);
  tried.settled =
      desk_of(lesson_->desks[0])->document->laid_in_full() && desk_of(lesson_->desks[1])->document->laid_in_full();
  tried.reached = tried.settled && judge(attempt.goal, laid_pair(wounds, draws_off)).holds;
  return tried;
}

}  // namespace laywright
