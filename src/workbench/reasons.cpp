// Why a command cannot be done now, in words that say what would help.
#include <algorithm>
#include <cmath>
#include <type_traits>

#include <fmt/format.h>

#include "report/sheet_file.h"
#include "workbench/doer.h"
#include "workbench/study_wish.h"

namespace laywright {
namespace {

constexpr const char* no_plan = "No plan is open: open one first.";
constexpr const char* not_laid = "Nothing is laid yet: wait a moment, or mend the plan.";
constexpr const char* no_finding = "This build has no findings.";
constexpr const char* no_lesson = "No lesson is open: choose one from the Learn menu.";
constexpr const char* in_lesson = "A lesson is open: leave it first, from the Learn menu.";
constexpr const char* not_shown = "Nothing is shown to others: begin with F9.";
constexpr const char* nothing_picked = "No turn is picked: click one in the picture.";

template <class C, class... Among>
constexpr bool is_one_of = (std::is_same_v<C, Among> || ...);

template <class C>
constexpr bool needs_nothing =
    is_one_of<C, cmd::Open, cmd::OpenSample, cmd::Activate, cmd::Recover, cmd::DropRecovery, cmd::Ask, cmd::Answered,
              cmd::DismissNotice, cmd::SetScale, cmd::ToggleUnits, cmd::ToggleTheme, cmd::ToggleProjection,
              cmd::SetColouring, cmd::NextColouring, cmd::ToggleOutside, cmd::ToggleFindings, cmd::ToggleDimensions,
              cmd::ToggleSeeThrough, cmd::ToggleGuide, cmd::ToggleMotion, cmd::OpenLesson, cmd::GoInLesson,
              cmd::AnswerLesson, cmd::ShowStepAgain, cmd::TakeTryBack, cmd::RestartLesson, cmd::CloseLesson,
              cmd::PauseShow, cmd::TellSizes, cmd::LeaveShow>;

// What would take one of a lesson's two builds away, or make a file of a plan that is for practice.
template <class C>
constexpr bool not_in_lesson = is_one_of<C, cmd::Activate, cmd::Save, cmd::SaveAs, cmd::Revert, cmd::PinBuild,
                                         cmd::CompareWith, cmd::StopComparing, cmd::ToggleLinked>;

template <class C>
constexpr bool needs_build =
    is_one_of<C, cmd::ScrubLength, cmd::ScrubTurn, cmd::ScrubTime, cmd::PlayPause, cmd::SetRate, cmd::ChangeRate,
              cmd::StepTurns, cmd::StepFinding, cmd::ToStart, cmd::ToEnd, cmd::PickNode, cmd::PickToward,
              cmd::ScrubToPicked, cmd::ChooseFinding, cmd::FlyToFinding, cmd::FlyToNextFinding, cmd::PeelOne,
              cmd::LookFrom, cmd::FitView, cmd::ShowAll, cmd::PinBuild, cmd::Show>;

bool is_finite(std::optional<double> value) { return !value || !std::isnan(*value); }

}  // namespace

template <class C>
std::string Workbench::Reasons::operator()(const C& command) const {
  if constexpr (!needs_nothing<C>) {
    if (bench.active() == nullptr) return no_plan;
  }
  if constexpr (not_in_lesson<C>) {
    if (bench.lesson_) return in_lesson;
  }
  if constexpr (needs_build<C>) {
    if (!(is_one_of<C, cmd::PinBuild, cmd::Show> ? bench.wound() : bench.wound_in_hand())) return not_laid;
  }
  return of(command);
}

std::string Workbench::why_not(const Command& command) const { return std::visit(Reasons{*this}, command); }

std::string Workbench::Reasons::of(const cmd::OpenSample&) const {
  return bench.options_.sample.empty() ? "The program was started without its samples." : "";
}

std::string Workbench::Reasons::of(const cmd::Activate& c) const {
  return c.document < bench.desks_.size() ? "" : "That plan is no longer open.";
}

std::string Workbench::Reasons::of(const cmd::Save&) const {
  return document().dirty() || document().path().empty() ? "" : "There is nothing to save: the file is up to date.";
}

std::string Workbench::Reasons::of(const cmd::SaveSheet& c) const {
  if (!sheet_format_of(c.path))
    return "The file's ending says what is written: give it a name that ends in .pdf, .svg or .png.";
  const bool drawn = c.pages && c.page >= 1 && static_cast<std::size_t>(c.page) <= c.pages->size();
  if (!drawn) return "The sheet is not drawn yet: wait a moment.";
  const bool busy = bench.sheet_writer_.busy();
  return busy ? "The sheet is still being written: wait a moment." : "";
}

// None can be made of the plan as it stands.
std::string Workbench::Reasons::why_no_page() const {
  if (!bench.options_.make_page) {
    return "This program was built without the share page. Build it with -DLAYWRIGHT_SHARE_PAGE=ON, which needs "
           "Emscripten.";
  }
  if (!document().sound()) return "The plan is not sound yet: mend what is marked first.";
  if (document().laying().stopped) return "Laying was stopped: lay the plan again, with F5.";
  return document().laid_in_full() ? "" : "The plan is being laid: the page can be saved when the whole wind lies.";
}

std::string Workbench::Reasons::of(const cmd::SavePage& c) const {
  if (std::string why = why_no_page(); !why.empty()) return why;
  if (!is_page_file(c.path)) return "A browser opens files that end in .html: give it such a name.";
  return bench.page_writer_.busy() ? "A page is still being written: wait a moment, or stop it." : "";
}

std::string Workbench::Reasons::of(const cmd::StopSavingPage&) const {
  return bench.page_writer_.busy() ? "" : "No page is being written.";
}

std::string Workbench::Reasons::of(const cmd::KeepMine&) const {
  return document().on_disk() == OnDisk::same ? "Nobody else has changed the file." : "";
}

std::string Workbench::Reasons::of(const cmd::Recover& c) const {
  return c.offer < bench.recovery_->offers().size() ? "" : "There is no such unsaved work.";
}

std::string Workbench::Reasons::of(const cmd::DropRecovery& c) const { return of(cmd::Recover{c.offer}); }

std::string Workbench::Reasons::of(const cmd::SetField& c) const {
  if (!is_finite(c.value)) return "That is not a number.";
  return of(cmd::TypeField{c.path, "", 0});
}

std::string Workbench::Reasons::of(const cmd::TypeField& c) const {
  if (field_at(document().state().draft, c.path) != nullptr) return "";
  return fmt::format("The plan has no field {}.", c.path);
}

std::string Workbench::Reasons::of(const cmd::RemoveStep& c) const {
  return c.index < document().state().draft.wind.steps.size() ? "" : "The plan has no such step.";
}

std::string Workbench::Reasons::of(const cmd::LeaveOutUnknown&) const {
  return unknown_in(document().state()).empty() ? "The plan has no unknown keys." : "";
}

std::string Workbench::Reasons::of(const cmd::Undo&) const {
  return document().history().can_undo() ? "" : "There is nothing to undo.";
}

std::string Workbench::Reasons::of(const cmd::Redo&) const {
  return document().history().can_redo() ? "" : "There is nothing to redo.";
}

std::string Workbench::Reasons::of(const cmd::StopLaying&) const {
  return document().laying().busy || bench.active()->advice->busy() ? "" : "Nothing is being laid or searched for.";
}

std::string Workbench::Reasons::of(const cmd::LayAgain&) const {
  return document().sound() ? "" : "The plan is not sound yet: mend what is marked first.";
}

std::string Workbench::Reasons::of(const cmd::NextSeed&) const {
  if (!scatters(document().state().draft)) {
    return "Nothing in this plan scatters: give it a scatter of pitch, stop or diameter, or a guide play, first.";
  }
  return of(cmd::LayAgain{});
}

std::string Workbench::Reasons::of(const cmd::StepFinding& c) const {
  if (finding_count() == 0) return no_finding;
  if (finding_beside(stage().playback, wound(), c.direction)) return "";
  return c.direction > 0 ? "No finding begins later in the wind." : "No finding begins earlier in the wind.";
}

std::string Workbench::Reasons::of(const cmd::PickToward& c) const {
  const std::optional<std::size_t> node = picked_node(stage(), wound());
  if (!node) return nothing_picked;
  return neighbour(wound(), *node, c.toward) ? "" : "There is no turn in that direction.";
}

std::string Workbench::Reasons::of(const cmd::ScrubToPicked&) const {
  return picked_node(stage(), wound()) ? "" : nothing_picked;
}

std::string Workbench::Reasons::of(const cmd::ChooseFinding& c) const {
  return !c.finding || *c.finding < finding_count() ? "" : "There is no such finding.";
}

std::string Workbench::Reasons::of(const cmd::FlyToFinding& c) const { return of(cmd::ChooseFinding{c.finding}); }

std::string Workbench::Reasons::of(const cmd::FlyToNextFinding&) const {
  return finding_count() == 0 ? no_finding : "";
}

std::string Workbench::Reasons::of(const cmd::PeelOne& c) const {
  const View& view = stage().view;
  const int layers = static_cast<int>(wound().build().strokes.size());
  const int last = std::min(view.last_layer.value_or(layers), layers);
  if (c.layers < 0 && last <= view.first_layer) return "Only one layer is shown.";
  return c.layers > 0 && last >= layers ? "All layers are shown." : "";
}

std::string Workbench::Reasons::of(const cmd::CompareWith& c) const {
  if (c.document >= bench.desks_.size()) return "That plan is no longer open.";
  return c.document == bench.active_
             ? "That is the plan that is shown: choose another one, or keep this build with K."
             : "";
}

std::string Workbench::Reasons::of(const cmd::StopComparing&) const {
  return bench.comparison_ ? "" : "Nothing is compared.";
}

std::string Workbench::Reasons::of(const cmd::ToggleLinked&) const { return of(cmd::StopComparing{}); }

std::string Workbench::Reasons::of(const cmd::TakeInHand&) const {
  if (!bench.comparison_) return of(cmd::StopComparing{});
  return bench.comparison_->linked ? "The two pictures move together: unlink them first, with Shift+K." : "";
}

std::string Workbench::Reasons::of(const cmd::GoInLesson& c) const {
  if (!bench.lesson_) return no_lesson;
  const auto steps = static_cast<int>(bench.lesson_->lesson->steps.size());
  const int to = static_cast<int>(bench.lesson_->step) + c.steps;
  if (to < 0) return "This is the first step.";
  return to < steps ? "" : "This is the last step.";
}

std::string Workbench::Reasons::of(const cmd::AnswerLesson& c) const {
  if (!bench.lesson_) return no_lesson;
  const LessonRun& run = *bench.lesson_;
  if (!run.now().question || c.answer >= run.now().question->answers.size()) return "There is no such answer.";
  return run.answer() ? "The question is answered already: the first answer counts." : "";
}

std::string Workbench::Reasons::of(const cmd::ShowStepAgain&) const { return bench.lesson_ ? "" : no_lesson; }

std::string Workbench::Reasons::of(const cmd::TakeTryBack&) const {
  if (!bench.lesson_) return no_lesson;
  return document().as_given() ? "Nothing has been changed." : "";
}

std::string Workbench::Reasons::of(const cmd::RestartLesson&) const { return bench.lesson_ ? "" : no_lesson; }

std::string Workbench::Reasons::of(const cmd::CloseLesson&) const { return bench.lesson_ ? "" : no_lesson; }

std::string Workbench::Reasons::of(const cmd::PauseShow&) const { return bench.showing_ ? "" : not_shown; }
std::string Workbench::Reasons::of(const cmd::TellSizes&) const { return bench.showing_ ? "" : not_shown; }
std::string Workbench::Reasons::of(const cmd::LeaveShow&) const { return bench.showing_ ? "" : not_shown; }

std::string Workbench::Reasons::of(const cmd::ExplainFinding&) const {
  if (bench.other_in_hand())
    return "The finding is the other picture's: take that of the plan in hand first, with H.";
  if (!document().laid_in_full()) {
    return document().sound() ? "The plan is still being laid: wait until the whole wind lies."
                              : of(cmd::LayAgain{});
  }
  const std::optional<std::size_t> chosen = stage().view.chosen_finding;
  if (finding_count() == 0) return no_finding;
  return chosen && *chosen < finding_count()
             ? ""
             : "No finding is chosen: click one in the tab Findings, or go to one with N.";
}

std::string Workbench::Reasons::of(const cmd::SearchBetter&) const { return of(cmd::LayAgain{}); }

std::string Workbench::Reasons::of(const cmd::RunStudy& c) const {
  if (!document().sound()) return of(cmd::LayAgain{});
  const Result<StudySpec> spec = spec_of(c.wish, document().state().draft, bench.rows(), document().seed());
  return spec.ok() ? "" : trouble_words(spec.issues());
}

std::string Workbench::Reasons::of(const cmd::JudgeDraws&) const {
  const Document& plan = document();
  if (!plan.laid_in_full() || !plan.wound()->verdict()) return "The verdict on this build comes first.";
  return bench.active()->advice->status(AdviceKind::draws).busy ? "It is being done." : "";
}

std::string Workbench::Reasons::of(const cmd::StopAdvice& c) const {
  return bench.active()->advice->status(c.kind).busy ? "" : "Nothing is being searched for.";
}

std::string Workbench::Reasons::of(const cmd::ForgetAdvice& c) const {
  const Advice& advice = *bench.active()->advice;
  const InquiryStatus status = advice.status(c.kind);
  const bool any = advice.basis(c.kind) != nullptr || status.stopped || !status.trouble.empty();
  return any ? "" : "There is no answer.";
}

std::string Workbench::Reasons::of(const cmd::SetAdvised& c) const {
  const std::optional<Standing> standing = bench.standing(c.kind);
  if (c.compare && bench.lesson_) return in_lesson;
  if (!standing) return "There is no answer yet: ask first.";
  if (standing->stale) return "The plan has changed since: undo that, or ask again.";
  if (standing->set == c.option) return "The plan is set so already.";
  if (!bench.active()->advice->option(c.kind, c.option)) return "There is no sound plan with those settings.";
  return c.compare && !document().laid_in_full() ? "The plan is still being laid: wait until the whole wind lies."
                                                 : "";
}

std::string Workbench::Reasons::of(const cmd::Ask& c) const {
  const bool of_plan = c.question == cmd::Question::file_to_save || c.question == cmd::Question::close_unsaved;
  const bool of_sheet = c.question == cmd::Question::setup_sheet || c.question == cmd::Question::sheet_to_save;
  const bool of_advice = c.question == cmd::Question::better_settings;
  if ((of_plan || of_sheet || of_advice) && bench.active() == nullptr) return no_plan;
  if (of_sheet && !bench.wound()) return not_laid;
  const bool of_page = c.question == cmd::Question::share_page || c.question == cmd::Question::page_to_save;
  if (of_page && bench.active() == nullptr) return no_plan;
  if (of_page && !bench.options_.make_page) return why_no_page();
  const bool breaks = c.question == cmd::Question::file_to_save || c.question == cmd::Question::what_to_compare;
  if (breaks && bench.lesson_) return in_lesson;
  if (c.question == cmd::Question::what_to_compare && bench.desks_.size() < 2) {
    if (bench.comparison_) return "Two builds are compared already; for another one, open its plan.";
    return "There is no other plan to compare with: open one, or keep this build with K and change its plan.";
  }
  return "";
}

std::string Workbench::Reasons::of(const cmd::DismissNotice& c) const {
  return c.index < bench.notices_.size() ? "" : "That notice is gone.";
}

}  // namespace laywright
