#include "session/advice_commands.h"

#include <fmt/format.h>

#include "desk/plan_edits.h"
#include "session/bench_inside.h"
#include "session/compare_commands.h"
#include "session/reasons.h"
#include "session/study_request.h"

namespace laywright {
namespace {

const Advice& advice_of(const Workbench& bench) { return *bench.active()->advice; }

std::string why_not_explain(const Workbench& bench) {
  if (bench.other_in_hand())
    return "The finding is the other picture's: take that of the plan in hand first, with H.";
  if (!document_of(bench).laid_in_full()) {
    return document_of(bench).sound() ? reason::being_laid : why_not_sound(bench);
  }
  const std::size_t count = bench.wound_in_hand()->measurements().findings.size();
  const std::optional<std::size_t> chosen = bench.stage_in_hand()->view.chosen_finding;
  if (count == 0) return reason::no_finding;
  return chosen && *chosen < count ? ""
                                   : "No finding is chosen: click one in the tab Findings, or go to one with N.";
}

std::string why_not_study(const Workbench& bench, const StudyRequest& request) {
  if (std::string why = why_not_sound(bench); !why.empty()) return why;
  const Document& document = document_of(bench);
  const Result<StudySpec> spec = spec_of(request, document.state().draft, bench.rows(), document.seed());
  return spec.ok() ? "" : trouble_words(spec.issues());
}

void study(const BenchInside& in, const StudyRequest& request) {
  const Result<StudySpec> spec = spec_of(request, in.state().draft, in.bench.rows(), in.document().seed());
  in.advice().ask_study(check(in.state().draft).value(), spec.value());
}

std::string why_not_judge(const Workbench& bench) {
  const Document& plan = document_of(bench);
  if (!plan.laid_in_full() || !plan.wound()->verdict()) return "The verdict on this build comes first.";
  return advice_of(bench).status(AdviceKind::draws).busy ? "It is being done." : "";
}

std::string no_answer(const Workbench& bench, AdviceKind kind) {
  const InquiryStatus status = advice_of(bench).status(kind);
  const bool any = advice_of(bench).basis(kind) != nullptr || status.stopped || !status.trouble.empty();
  return any ? "" : "There is no answer.";
}

std::string why_not_set(const Workbench& bench, AdviceKind kind, std::size_t option, bool compare) {
  const std::optional<Standing> standing = bench.standing(kind);
  if (compare && bench.lesson()) return reason::in_lesson;
  if (!standing) return "There is no answer yet: ask first.";
  if (standing->stale) return "The plan has changed since: undo that, or ask again.";
  if (standing->set == option) return "The plan is set so already.";
  if (!advice_of(bench).option(kind, option)) return "There is no sound plan with those settings.";
  return compare && !document_of(bench).laid_in_full() ? reason::being_laid : "";
}

// One proposal after the other is held against the same build: that of the plan that the advice is on.
void keep_for_comparison(const BenchInside& in, AdviceKind kind) {
  const PlanDraft& before = in.advice().basis(kind)->plan.draft();
  const bool kept =
      in.comparison && in.comparison->pinned && same_wind(before, in.comparison->pinned->plan().draft());
  if (!kept) cmd::pin_build().act(in);
}

}  // namespace

Command cmd::explain_finding() {
  return {{.name = "explain finding",
           .needs = Needs::plan,
           .why_not = why_not_explain,
           .act = [](const BenchInside& in) {
             in.advice().ask_cause(in.bench.wound(), in.document().seed(), *in.view().chosen_finding);
           }}};
}

Command cmd::search_better(const BetterRequest& request) {
  return {{.name = "search better", .why_not = why_not_sound, .act = [request](const BenchInside& in) {
             in.advice().ask_better(check(in.state().draft).value(), in.document().seed(), request);
           }}};
}

Command cmd::run_study(const StudyRequest& request) {
  return {{.name = "run study",
           .why_not = [request](const Workbench& bench) { return why_not_study(bench, request); },
           .act = [request](const BenchInside& in) { study(in, request); }}};
}

Command cmd::judge_draws() {
  return {{.name = "judge draws", .why_not = why_not_judge, .act = [](const BenchInside& in) {
             in.advice().ask_draws(in.document().wound(), in.document().seed());
           }}};
}

Command cmd::stop_advice(AdviceKind kind) {
  return {{.name = "stop advice",
           .why_not =
               [kind](const Workbench& bench) {
                 return advice_of(bench).status(kind).busy ? "" : "Nothing is being searched for.";
               },
           .act = [kind](const BenchInside& in) { in.advice().stop(kind); }}};
}

Command cmd::forget_advice(AdviceKind kind) {
  return {{.name = "forget advice",
           .why_not = [kind](const Workbench& bench) { return no_answer(bench, kind); },
           .act = [kind](const BenchInside& in) { in.advice().forget(kind); }}};
}

Command cmd::set_advised(AdviceKind kind, std::size_t option, bool compare) {
  return {{.name = "set advised",
           .why_not = [kind, option,
                       compare](const Workbench& bench) { return why_not_set(bench, kind, option, compare); },
           .act =
               [kind, option, compare](const BenchInside& in) {
                 const PlanDraft target = *in.advice().option(kind, option);
                 if (compare) keep_for_comparison(in, kind);
                 in.document().edit(with_values_of(in.state(), target), Advice::option_name(kind, option));
               }}};
}

}  // namespace laywright
