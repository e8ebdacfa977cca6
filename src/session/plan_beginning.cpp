#include "session/plan_beginning.h"

#include <utility>

#include "advise/begin.h"
#include "figures/new_plan.h"
#include "session/advice.h"
#include "store/catalogues.h"

namespace laywright {
namespace {

Result<ProposedPlan> propose(const NewRequest& request, const NewDraft& made, Progress& progress) {
  BeginSettings settings;
  settings.given = made.given;
  settings.threads = advice_threads();
  Result<Beginning> beginning = begin_plan(made.draft, settings, progress);
  if (!beginning) return beginning.issues();
  const Beginning& found = beginning.value();
  return ProposedPlan{request, found.draft, found.verdict,
                      new_plan_text(found.draft, {found.verdict, made.assumed})};
}

}  // namespace

void PlanBeginning::ask(const NewRequest& request, const std::shared_ptr<const EntrySource>& entries) {
  const Catalogues none({});
  const Result<NewDraft> made = draft_of(request, entries ? *entries : none);
  forget();
  issues_ = made.issues();
  if (!made) return;
  search_.ask([request, made = made.value()](Progress& progress) { return propose(request, made, progress); });
}

void PlanBeginning::forget() {
  search_.stop();
  search_.forget();
  issues_.clear();
}

}  // namespace laywright
