// Commands that ask for advice, and follow it.
#include <fmt/format.h>

#include "workbench/doer.h"
#include "workbench/study_wish.h"

namespace laywright {

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

bool Workbench::Doer::operator()(const cmd::ExplainFinding&) const {
  advice().ask_cause(bench.wound(), document().seed(), *stage().view.chosen_finding);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SearchBetter& c) const {
  advice().ask_better(check(state().draft).value(), document().seed(), c.wish);
  return true;
}

bool Workbench::Doer::operator()(const cmd::RunStudy& c) const {
  const Result<StudySpec> spec = spec_of(c.wish, state().draft, bench.rows(), document().seed());
  advice().ask_study(check(state().draft).value(), spec.value());
  return true;
}

bool Workbench::Doer::operator()(const cmd::JudgeDraws&) const {
  advice().ask_draws(document().wound(), document().seed());
  return true;
}

bool Workbench::Doer::operator()(const cmd::StopAdvice& c) const {
  advice().stop(c.kind);
  return true;
}

bool Workbench::Doer::operator()(const cmd::ForgetAdvice& c) const {
  advice().forget(c.kind);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetAdvised& c) const {
  const PlanDraft target = *advice().option(c.kind, c.option);
  if (c.compare) {
    // One proposal after the other is held against the same build: that of the plan that the advice is on.
    const PlanDraft& before = advice().basis(c.kind)->plan.draft();
    const bool kept = bench.comparison_ && bench.comparison_->pinned &&
                      same_wind(before, bench.comparison_->pinned->plan().draft());
    if (!kept) (*this)(cmd::PinBuild{});
  }
  document().edit(with_values_of(state(), target), Advice::option_name(c.kind, c.option));
  return true;
}

}  // namespace laywright
