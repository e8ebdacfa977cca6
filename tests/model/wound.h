// A plan laid and measured, for tests of the whole model.
#pragma once

#include <catch2/catch.hpp>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"

namespace laywright::testing {

struct Wound {
  Build build;
  Measurements measured;
};

inline Wound wound(const Plan& plan, double fidelity = 1.0) {
  Progress progress;
  LaySettings settings;
  settings.fidelity = fidelity;
  Result<Build> build = lay(plan, settings, progress);
  REQUIRE(build.ok());
  Wound result{std::move(build).value(), {}};
  result.measured = measure(plan, result.build, progress);
  return result;
}

inline Wound wound(const PlanDraft& draft, double fidelity = 1.0) {
  const Result<Plan> plan = check(draft);
  for (const Issue& issue : plan.issues()) INFO(to_text(issue));
  REQUIRE(plan.ok());
  return wound(plan.value(), fidelity);
}

inline Plan sample(const std::string& name) {
  const Result<Plan> plan = load_plan(std::string(LAYWRIGHT_SOURCE_DIR) + "/samples/" + name + ".lay.toml");
  for (const Issue& issue : plan.issues()) INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

}  // namespace laywright::testing
