// Inside Workbench: one function per command.
#pragma once

#include "workbench/advice.h"
#include "workbench/workbench.h"

namespace laywright {

// True: done. What it relies on was asked for by Reasons before.
struct Workbench::Doer {
  Workbench& bench;

  bool operator()(const cmd::Open& c) const;
  bool operator()(const cmd::OpenSample& c) const;
  bool operator()(const cmd::Activate& c) const;
  bool operator()(const cmd::Save& c) const;
  bool operator()(const cmd::SaveAs& c) const;
  bool operator()(const cmd::SaveSheet& c) const;
  bool operator()(const cmd::SavePage& c) const;
  bool operator()(const cmd::StopSavingPage& c) const;
  bool operator()(const cmd::Revert& c) const;
  bool operator()(const cmd::KeepMine& c) const;
  bool operator()(const cmd::Close& c) const;
  bool operator()(const cmd::Recover& c) const;
  bool operator()(const cmd::DropRecovery& c) const;

  bool operator()(const cmd::SetField& c) const;
  bool operator()(const cmd::TypeField& c) const;
  bool operator()(const cmd::SetTitle& c) const;
  bool operator()(const cmd::SetNotes& c) const;
  bool operator()(const cmd::AddStep& c) const;
  bool operator()(const cmd::RemoveStep& c) const;
  bool operator()(const cmd::SetTakeup& c) const;
  bool operator()(const cmd::SetWindEnd& c) const;
  bool operator()(const cmd::LeaveOutUnknown& c) const;
  bool operator()(const cmd::Undo& c) const;
  bool operator()(const cmd::Redo& c) const;
  bool operator()(const cmd::StopLaying& c) const;
  bool operator()(const cmd::LayAgain& c) const;
  bool operator()(const cmd::SetSeed& c) const;
  bool operator()(const cmd::NextSeed& c) const;

  bool operator()(const cmd::ScrubLength& c) const;
  bool operator()(const cmd::ScrubTurn& c) const;
  bool operator()(const cmd::ScrubTime& c) const;
  bool operator()(const cmd::PlayPause& c) const;
  bool operator()(const cmd::SetRate& c) const;
  bool operator()(const cmd::ChangeRate& c) const;
  bool operator()(const cmd::StepTurns& c) const;
  bool operator()(const cmd::StepFinding& c) const;
  bool operator()(const cmd::ToStart& c) const;
  bool operator()(const cmd::ToEnd& c) const;
  bool operator()(const cmd::PickNode& c) const;
  bool operator()(const cmd::PickToward& c) const;
  bool operator()(const cmd::ScrubToPicked& c) const;
  bool operator()(const cmd::ChooseFinding& c) const;
  bool operator()(const cmd::FlyToFinding& c) const;
  bool operator()(const cmd::FlyToNextFinding& c) const;

  bool operator()(const cmd::Peel& c) const;
  bool operator()(const cmd::PeelOne& c) const;
  bool operator()(const cmd::SetWedge& c) const;
  bool operator()(const cmd::SetAxialCut& c) const;
  bool operator()(const cmd::ToggleWedge& c) const;
  bool operator()(const cmd::ToggleAxialCut& c) const;
  bool operator()(const cmd::SetXRange& c) const;
  bool operator()(const cmd::SetColouring& c) const;
  bool operator()(const cmd::NextColouring& c) const;
  bool operator()(const cmd::ToggleOutside& c) const;
  bool operator()(const cmd::ToggleFindings& c) const;
  bool operator()(const cmd::ToggleDimensions& c) const;
  bool operator()(const cmd::ToggleSeeThrough& c) const;
  bool operator()(const cmd::ToggleGuide& c) const;
  bool operator()(const cmd::ToggleUnits& c) const;
  bool operator()(const cmd::ToggleTheme& c) const;
  bool operator()(const cmd::ToggleProjection& c) const;
  bool operator()(const cmd::ToggleMotion& c) const;
  bool operator()(const cmd::SetCamera& c) const;
  bool operator()(const cmd::Orbit& c) const;
  bool operator()(const cmd::Zoom& c) const;
  bool operator()(const cmd::LookFrom& c) const;
  bool operator()(const cmd::FitView& c) const;
  bool operator()(const cmd::ShowAll& c) const;
  bool operator()(const cmd::SetPictureSize& c) const;
  bool operator()(const cmd::SetScale& c) const;

  bool operator()(const cmd::PinBuild& c) const;
  bool operator()(const cmd::CompareWith& c) const;
  bool operator()(const cmd::StopComparing& c) const;
  bool operator()(const cmd::ToggleLinked& c) const;
  bool operator()(const cmd::TakeInHand& c) const;
  bool operator()(const cmd::OpenLesson& c) const;
  bool operator()(const cmd::GoInLesson& c) const;
  bool operator()(const cmd::AnswerLesson& c) const;
  bool operator()(const cmd::ShowStepAgain& c) const;
  bool operator()(const cmd::TakeTryBack& c) const;
  bool operator()(const cmd::RestartLesson& c) const;
  bool operator()(const cmd::CloseLesson& c) const;
  bool operator()(const cmd::Show& c) const;
  bool operator()(const cmd::PauseShow& c) const;
  bool operator()(const cmd::TellSizes& c) const;
  bool operator()(const cmd::LeaveShow& c) const;
  bool operator()(const cmd::ExplainFinding& c) const;
  bool operator()(const cmd::SearchBetter& c) const;
  bool operator()(const cmd::RunStudy& c) const;
  bool operator()(const cmd::JudgeDraws& c) const;
  bool operator()(const cmd::StopAdvice& c) const;
  bool operator()(const cmd::ForgetAdvice& c) const;
  bool operator()(const cmd::SetAdvised& c) const;

  bool operator()(const cmd::Ask& c) const;
  bool operator()(const cmd::Answered& c) const;
  bool operator()(const cmd::DismissNotice& c) const;

 private:
  // Preconditions: a plan is open; it is laid.
  [[nodiscard]] Document& document() const { return *bench.desks_[bench.active_].document; }
  // Of the picture in hand.
  [[nodiscard]] Stage& stage() const {
    return bench.other_in_hand() ? bench.comparison_->stage : bench.desks_[bench.active_].stage;
  }
  [[nodiscard]] View& view() const { return stage().view; }
  [[nodiscard]] const PlanState& state() const { return document().state(); }
  [[nodiscard]] const Wound& wound() const { return *bench.wound_in_hand(); }

  [[nodiscard]] Advice& advice() const { return *bench.desks_[bench.active_].advice; }

  bool scrub(const Playback& playback) const;
  bool told(const std::string& what, const Issues& issues) const;  // tells failures; true without issues
  [[nodiscard]] Issues replaces_plan(const std::string& path) const;
  // Makes a preference that of every view, and remembers it.
  template <class Change>
  bool prefer(Change change) const;
};

// Why a command cannot be done now; empty when it can.
struct Workbench::Reasons {
  const Workbench& bench;

  template <class C>
  std::string operator()(const C& command) const;

 private:
  [[nodiscard]] std::string of(const cmd::OpenSample& c) const;
  [[nodiscard]] std::string of(const cmd::Activate& c) const;
  [[nodiscard]] std::string of(const cmd::Save& c) const;
  [[nodiscard]] std::string of(const cmd::SaveSheet& c) const;
  [[nodiscard]] std::string of(const cmd::SavePage& c) const;
  [[nodiscard]] std::string of(const cmd::StopSavingPage& c) const;
  [[nodiscard]] std::string why_no_page() const;
  [[nodiscard]] std::string of(const cmd::KeepMine& c) const;
  [[nodiscard]] std::string of(const cmd::Recover& c) const;
  [[nodiscard]] std::string of(const cmd::DropRecovery& c) const;
  [[nodiscard]] std::string of(const cmd::SetField& c) const;
  [[nodiscard]] std::string of(const cmd::TypeField& c) const;
  [[nodiscard]] std::string of(const cmd::RemoveStep& c) const;
  [[nodiscard]] std::string of(const cmd::LeaveOutUnknown& c) const;
  [[nodiscard]] std::string of(const cmd::Undo& c) const;
  [[nodiscard]] std::string of(const cmd::Redo& c) const;
  [[nodiscard]] std::string of(const cmd::StopLaying& c) const;
  [[nodiscard]] std::string of(const cmd::LayAgain& c) const;
  [[nodiscard]] std::string of(const cmd::NextSeed& c) const;
  [[nodiscard]] std::string of(const cmd::StepFinding& c) const;
  [[nodiscard]] std::string of(const cmd::PickToward& c) const;
  [[nodiscard]] std::string of(const cmd::ScrubToPicked& c) const;
  [[nodiscard]] std::string of(const cmd::ChooseFinding& c) const;
  [[nodiscard]] std::string of(const cmd::FlyToFinding& c) const;
  [[nodiscard]] std::string of(const cmd::FlyToNextFinding& c) const;
  [[nodiscard]] std::string of(const cmd::PeelOne& c) const;
  [[nodiscard]] std::string of(const cmd::CompareWith& c) const;
  [[nodiscard]] std::string of(const cmd::StopComparing& c) const;
  [[nodiscard]] std::string of(const cmd::ToggleLinked& c) const;
  [[nodiscard]] std::string of(const cmd::TakeInHand& c) const;
  [[nodiscard]] std::string of(const cmd::GoInLesson& c) const;
  [[nodiscard]] std::string of(const cmd::AnswerLesson& c) const;
  [[nodiscard]] std::string of(const cmd::ShowStepAgain& c) const;
  [[nodiscard]] std::string of(const cmd::TakeTryBack& c) const;
  [[nodiscard]] std::string of(const cmd::RestartLesson& c) const;
  [[nodiscard]] std::string of(const cmd::CloseLesson& c) const;
  [[nodiscard]] std::string of(const cmd::PauseShow& c) const;
  [[nodiscard]] std::string of(const cmd::TellSizes& c) const;
  [[nodiscard]] std::string of(const cmd::LeaveShow& c) const;
  [[nodiscard]] std::string of(const cmd::ExplainFinding& c) const;
  [[nodiscard]] std::string of(const cmd::SearchBetter& c) const;
  [[nodiscard]] std::string of(const cmd::RunStudy& c) const;
  [[nodiscard]] std::string of(const cmd::JudgeDraws& c) const;
  [[nodiscard]] std::string of(const cmd::StopAdvice& c) const;
  [[nodiscard]] std::string of(const cmd::ForgetAdvice& c) const;
  [[nodiscard]] std::string of(const cmd::SetAdvised& c) const;
  [[nodiscard]] std::string of(const cmd::Ask& c) const;
  [[nodiscard]] std::string of(const cmd::DismissNotice& c) const;
  template <class C>
  [[nodiscard]] std::string of(const C&) const {
    return "";
  }

  [[nodiscard]] const Document& document() const { return *bench.active()->document; }
  // Of the picture in hand.
  [[nodiscard]] const Stage& stage() const { return *bench.stage_in_hand(); }
  [[nodiscard]] const Wound& wound() const { return *bench.wound_in_hand(); }
  [[nodiscard]] std::size_t finding_count() const { return wound().measurements().findings.size(); }
};

}  // namespace laywright
