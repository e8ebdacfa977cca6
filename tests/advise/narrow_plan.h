// A narrow spool for the tests of this folder: quick to lay, and with the same flaws as a wide one.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>

#include "lay/lay.h"
#include "lay/plans.h"
#include "measure/measurements.h"
#include "plan/lay_plan.h"

namespace laywright::testing {

// 0.25 mm fiber on a 150 mm barrel, 12 mm wide, ten layers or so: a sound wind.
inline PlanDraft narrow_draft() {
  PlanDraft draft = plain_draft();
  draft.title = "narrow";
  draft.spool.inside_width_mm = 12.0;
  draft.traverse.left_stop_mm = 0.08;
  draft.traverse.right_stop_mm = 0.08;
  draft.wind.turns = 460.0;
  return draft;
}

// Throws what is wrong with it.
inline Plan checked(const PlanDraft& draft) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) throw std::logic_error(to_text(plan.issues().front()));
  return plan.value();
}

struct Wound {
  Plan plan;
  Build build;
  Measurements measurements;
};

inline Wound wound(const PlanDraft& draft, const LaySettings& settings = {}) {
  Progress progress;
  Plan plan = checked(draft);
  Result<Build> build = lay(plan, settings, progress);
  if (!build.ok()) throw std::logic_error(to_text(build.issues().front()));
  Measurements measurements = measure(plan, build.value(), progress);
  return {std::move(plan), std::move(build).value(), std::move(measurements)};
}

}  // namespace laywright::testing
