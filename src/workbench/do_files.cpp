// Commands about files, comparison and what the window asks.
#include <utility>

#include <fmt/format.h>

#include "base/same_file.h"
#include "workbench/doer.h"

namespace laywright {

bool Workbench::Doer::told(const std::string& what, const Issues& issues) const {
  if (issues.empty()) return true;
  bench.tell_failure(what, issues);
  return false;
}

bool Workbench::Doer::operator()(const cmd::Open& c) const {
  bench.question_.reset();
  return bench.open(c.path);
}

bool Workbench::Doer::operator()(const cmd::OpenSample&) const { return bench.open(bench.options_.sample); }

bool Workbench::Doer::operator()(const cmd::Activate& c) const {
  bench.active_ = c.document;
  return true;
}

bool Workbench::Doer::operator()(const cmd::Save&) const {
  if (document().path().empty()) {
    bench.question_ = cmd::Question::file_to_save;
    return true;
  }
  return told("The plan was not saved.", document().save());
}

bool Workbench::Doer::operator()(const cmd::SaveAs& c) const {
  bench.question_.reset();
  std::error_code error;
  const std::filesystem::path full = std::filesystem::weakly_canonical(c.path, error);
  const std::filesystem::path file = error ? std::filesystem::path(c.path) : full;
  if (!told("The plan was not saved.", document().save_as(file))) return false;
  bench.remember_file(file.string());
  return true;
}

// What is made of a plan never takes its place.
Issues Workbench::Doer::replaces_plan(const std::string& path) const {
  if (!same_file(path, document().path())) return {};
  Issue issue;
  issue.file = path;
  issue.what = "is the plan's own file, which would be lost; choose another name";
  return {issue};
}

bool Workbench::Doer::operator()(const cmd::SaveSheet& c) const {
  if (!told("The sheet was not saved.", replaces_plan(c.path))) return false;
  bench.question_ = cmd::Question::setup_sheet;
  bench.sheet_writer_.start(c.path, sheet_maker(c.path, c.pages, c.page), bench.options_.wake);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SavePage& c) const {
  if (!told("The page was not saved.", replaces_plan(c.path))) return false;
  bench.question_ = cmd::Question::share_page;
  const Result<Plan> plan = check(document().state().draft);
  if (!plan) return told("There is no page of a plan that is not sound.", plan.issues());
  PageOrder order{[copy = document().recovery_copy()] { return copy().text; }, plan.value(), document().wound()};
  bench.page_writer_.start(c.path, page_maker(std::move(order), bench.options_.make_page), bench.options_.wake);
  return true;
}

bool Workbench::Doer::operator()(const cmd::StopSavingPage&) const {
  bench.page_writer_.stop();
  return true;
}

bool Workbench::Doer::operator()(const cmd::Revert&) const {
  return told("The file could not be read again.", document().revert());
}

bool Workbench::Doer::operator()(const cmd::KeepMine&) const {
  document().keep_mine();
  return true;
}

bool Workbench::Doer::operator()(const cmd::Close& c) const {
  if (bench.lesson_) return (*this)(cmd::CloseLesson{});
  if (document().dirty() && !c.discard) {
    bench.question_ = cmd::Question::close_unsaved;
    return true;
  }
  bench.question_.reset();
  bench.close(bench.active_);
  return true;
}

bool Workbench::Doer::operator()(const cmd::Recover& c) const {
  const RecoveryOffer offer = bench.recovery_->offers()[c.offer];
  Result<std::unique_ptr<Document>> recovered = Document::recovered(offer.work, bench.services());
  if (!recovered) return told("The unsaved work could not be read.", recovered.issues());
  bench.close_lesson();
  bench.add_desk(std::move(recovered).value());
  // It is kept anew before the old copy goes.
  Desk& desk = *bench.active_desk();
  bench.recovery_->keep(desk.id, desk.document->recovery_copy());
  desk.kept_changes = desk.document->changes();
  bench.recovery_->drop_offer(c.offer);
  return true;
}

bool Workbench::Doer::operator()(const cmd::DropRecovery& c) const {
  bench.recovery_->drop_offer(c.offer);
  return true;
}

bool Workbench::Doer::operator()(const cmd::PinBuild&) const {
  Comparison comparison;
  comparison.name = fmt::format("{}, kept", document().title());
  comparison.pinned = document().wound();
  comparison.stage = bench.active_desk()->stage;
  bench.comparison_ = std::move(comparison);
  return true;
}

bool Workbench::Doer::operator()(const cmd::CompareWith& c) const {
  bench.question_.reset();
  const Desk& other = bench.desks_[c.document];
  Comparison comparison;
  comparison.name = other.document->title();
  comparison.document = other.id;
  comparison.stage = other.stage;
  comparison.stage.view.width_px = bench.active_desk()->stage.view.width_px;
  comparison.stage.view.height_px = bench.active_desk()->stage.view.height_px;
  bench.comparison_ = std::move(comparison);
  return true;
}

bool Workbench::Doer::operator()(const cmd::StopComparing&) const {
  bench.comparison_.reset();
  return true;
}

bool Workbench::Doer::operator()(const cmd::ToggleLinked&) const {
  Comparison& comparison = *bench.comparison_;
  if (comparison.linked) comparison.stage = bench.other_stage();  // it goes on from where it is
  comparison.linked = !comparison.linked;
  comparison.in_hand = false;
  return true;
}

bool Workbench::Doer::operator()(const cmd::TakeInHand& c) const {
  Comparison& comparison = *bench.comparison_;
  comparison.in_hand = c.other.value_or(!comparison.in_hand);
  return true;
}

bool Workbench::Doer::operator()(const cmd::Show&) const {
  bench.showing_ = Showing{};
  return true;
}

bool Workbench::Doer::operator()(const cmd::PauseShow&) const {
  bench.showing_->paused = !bench.showing_->paused;
  return true;
}

bool Workbench::Doer::operator()(const cmd::TellSizes&) const {
  bench.showing_->details = !bench.showing_->details;
  return true;
}

bool Workbench::Doer::operator()(const cmd::LeaveShow&) const {
  bench.showing_.reset();
  return true;
}

bool Workbench::Doer::operator()(const cmd::Ask& c) const {
  if (c.question == cmd::Question::setup_sheet && bench.question_ != cmd::Question::sheet_to_save) {
    bench.sheet_writer_.forget();
  }
  if (c.question == cmd::Question::share_page && bench.question_ != cmd::Question::page_to_save) {
    bench.page_writer_.forget();
  }
  bench.question_ = c.question;
  return true;
}

bool Workbench::Doer::operator()(const cmd::Answered&) const {
  bench.question_.reset();
  return true;
}

bool Workbench::Doer::operator()(const cmd::DismissNotice& c) const {
  bench.notices_.erase(bench.notices_.begin() + static_cast<std::ptrdiff_t>(c.index));
  return true;
}

}  // namespace laywright
