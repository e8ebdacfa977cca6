// Everything that can be done in a workbench, as values: a panel or a key returns one, Workbench::apply does it.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "report/drawing.h"
#include "workbench/advice_wish.h"
#include "workbench/plan_edits.h"
#include "workbench/stage.h"

namespace laywright::cmd {

// --- files
struct Open {
  std::string path;
};
struct OpenSample {};
struct Activate {
  std::size_t document = 0;  // place in Workbench::documents()
};
struct Save {};
struct SaveAs {
  std::string path;
};
// The set-up sheet into a file, by its ending: .pdf, .svg, .png. It is written in the background; sheet_saving() tells
// what became of it.
using SheetDrawings = std::shared_ptr<const std::vector<Drawing>>;
struct SaveSheet {
  std::string path;
  SheetDrawings pages;
  int page = 1;  // that SVG and PNG hold
};
// The share page of the build into a file, *.html, in the background; page_saving() tells what became of it.
struct SavePage {
  std::string path;
};
struct StopSavingPage {};
struct Revert {};
struct KeepMine {};  // instead of what others made of the file
struct Close {
  bool discard = false;  // false: refused while something is unsaved
};
struct Recover {
  std::size_t offer = 0;
};
struct DropRecovery {
  std::size_t offer = 0;
};

// --- the plan. `gesture`: see History::edit
struct SetField {
  std::string path;
  std::optional<double> value;  // in the unit used inside; none: its default
  std::uint64_t gesture = 0;
};
struct TypeField {
  std::string path;
  std::string text;
  std::uint64_t gesture = 0;
};
struct SetTitle {
  std::string title;
  std::uint64_t gesture = 0;
};
struct SetNotes {
  std::string notes;
  std::uint64_t gesture = 0;
};
struct AddStep {};
struct RemoveStep {
  std::size_t index = 0;
};
struct SetTakeup {
  bool has_one = true;
};
struct SetWindEnd {
  WindEnd end = WindEnd::length;
};
struct LeaveOutUnknown {};
struct Undo {};
struct Redo {};

// --- laying
struct StopLaying {};
struct LayAgain {};
struct SetSeed {
  std::uint64_t seed = 1;
};
struct NextSeed {};

// --- scrubber
struct ScrubLength {
  double length_mm = 0.0;
};
struct ScrubTurn {
  double turn = 0.0;
};
struct ScrubTime {
  double time_s = 0.0;
};
struct PlayPause {};
struct SetRate {
  double rate = 1.0;  // times the line speed
};
struct ChangeRate {
  double factor = 2.0;
};
struct StepTurns {
  double turns = 1.0;
};
struct StepFinding {
  int direction = 1;
};
struct ToStart {};
struct ToEnd {};

// --- what is picked and chosen
struct PickNode {
  std::optional<std::size_t> node;  // of the build shown; none: nothing
};
struct PickToward {
  Toward toward = Toward::next;
};
struct ScrubToPicked {};
struct ChooseFinding {
  std::optional<std::size_t> finding;
};
struct FlyToFinding {
  std::size_t finding = 0;
};
struct FlyToNextFinding {
  int direction = 1;  // in the order of the list
};

// --- the view
struct Peel {
  int first_layer = 1;
  std::optional<int> last_layer;
};
struct PeelOne {
  int layers = -1;  // of the outermost shown: -1 takes one off, +1 puts one back
};
struct SetWedge {
  std::optional<Sector> wedge;
};
struct SetAxialCut {
  std::optional<double> angle_rad;
};
struct ToggleWedge {};
struct ToggleAxialCut {};
struct SetXRange {
  std::optional<double> from_mm, to_mm;
};
struct SetColouring {
  Colouring colouring = Colouring::layer;
};
struct NextColouring {};
struct ToggleOutside {};  // gone, faded
struct ToggleFindings {};
struct ToggleDimensions {};
struct ToggleSeeThrough {};
struct ToggleGuide {};
struct ToggleUnits {};
struct ToggleTheme {};
struct ToggleProjection {};
struct ToggleMotion {};  // cameras fly, or are there at once
struct SetCamera {
  Camera camera;
};
struct Orbit {
  double azimuth_deg = 0.0, elevation_deg = 0.0;
};
struct Zoom {
  double factor = 1.0;  // above 1: nearer
};
struct LookFrom {
  double azimuth_deg = 0.0, elevation_deg = 0.0;  // and fit
};
struct FitView {};
struct ShowAll {};  // no peel, no cut, the whole wind
struct SetPictureSize {
  int width_px = 1280, height_px = 720;
};
struct SetScale {
  double scale = 1.0;  // of the panels
};

// --- comparison
struct PinBuild {};  // keeps the build as it is now, to compare what comes with it
struct CompareWith {
  std::size_t document = 0;
};
struct StopComparing {};
struct ToggleLinked {};
struct TakeInHand {
  std::optional<bool> other;  // the other picture, or the active one; none: the one that is not in hand
};

// --- lessons
struct OpenLesson {
  std::string file;
};
struct GoInLesson {
  int steps = 1;  // below 0: back
};
struct AnswerLesson {
  std::size_t answer = 0;  // place in the question's answers; the first one counts
};
struct ShowStepAgain {};  // plays and points once more
struct TakeTryBack {};    // the plans as the lesson has them
struct RestartLesson {};
struct CloseLesson {};

// --- showing to others
struct Show {};
struct PauseShow {};  // and go on
struct TellSizes {};  // of spool and fiber, or not
struct LeaveShow {};

// --- advice on the active plan; answers come in the background
struct ExplainFinding {};  // why the chosen one is there
struct SearchBetter {
  BetterWish wish;
};
struct RunStudy {
  StudyWish wish;
};
struct JudgeDraws {};  // the build, by the worst of the usual number of draws
struct StopAdvice {
  AdviceKind kind = AdviceKind::cause;
};
struct ForgetAdvice {  // the answer is read
  AdviceKind kind = AdviceKind::cause;
};
// The plan as an answer would have it.
struct SetAdvised {
  AdviceKind kind = AdviceKind::cause;
  std::size_t option = 0;
  bool compare = false;  // beside the build as it was
};

// --- what the window itself must ask for
enum class Question {
  file_to_open,
  file_to_save,
  what_to_compare,
  close_unsaved,
  help,
  setup_sheet,
  sheet_to_save,
  better_settings,
  share_page,
  page_to_save
};
struct Ask {
  Question question = Question::help;
};
struct Answered {};  // asked, or given up

struct DismissNotice {
  std::size_t index = 0;
};

using Command =
    std::variant<Open, OpenSample, Activate, Save, SaveAs, SaveSheet, SavePage, StopSavingPage, Revert, KeepMine,
                 Close, Recover, DropRecovery, SetField, TypeField, SetTitle, SetNotes, AddStep, RemoveStep,
                 SetTakeup, SetWindEnd, LeaveOutUnknown, Undo, Redo, StopLaying, LayAgain, SetSeed, NextSeed,
                 ScrubLength, ScrubTurn, ScrubTime, PlayPause, SetRate, ChangeRate, StepTurns, StepFinding, ToStart,
                 ToEnd, PickNode, PickToward, ScrubToPicked, ChooseFinding, FlyToFinding, FlyToNextFinding, Peel,
                 PeelOne, SetWedge, SetAxialCut, ToggleWedge, ToggleAxialCut, SetXRange, SetColouring, NextColouring,
                 ToggleOutside, ToggleFindings, ToggleDimensions, ToggleSeeThrough, ToggleGuide, ToggleUnits,
                 ToggleTheme, ToggleProjection, ToggleMotion, SetCamera, Orbit, Zoom, LookFrom, FitView, ShowAll,
                 SetPictureSize, SetScale, PinBuild, CompareWith, StopComparing, ToggleLinked, TakeInHand,
                 OpenLesson, GoInLesson, AnswerLesson, ShowStepAgain, TakeTryBack, RestartLesson, CloseLesson, Show,
                 PauseShow, TellSizes, LeaveShow, ExplainFinding, SearchBetter, RunStudy, JudgeDraws, StopAdvice,
                 ForgetAdvice, SetAdvised, Ask, Answered, DismissNotice>;

}  // namespace laywright::cmd

namespace laywright {
using cmd::Command;
}
