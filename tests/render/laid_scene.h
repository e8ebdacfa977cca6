// A small wind, laid, and its scene source.
#pragma once

#include <memory>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"
#include "scene/scene.h"

namespace laywright {

inline SceneSource small_source(double fiber_mm = 1.0, double turns = 40.0) {
  PlanDraft draft = load_plan(LAYWRIGHT_SOURCE_DIR "/samples/parallel.lay.toml").value().draft();
  draft.fiber.diameter_mm = fiber_mm;
  draft.fiber.core_diameter_mm = 0.9 * fiber_mm;
  draft.wind.length_mm.reset();
  draft.wind.turns = turns;
  const Plan plan = check(draft).value();
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  const auto measurements = std::make_shared<const Measurements>(measure(plan, *build, progress));
  return {plan, build, measurements};
}

}  // namespace laywright
