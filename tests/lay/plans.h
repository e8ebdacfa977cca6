// Plans for the tests, made in code: each sets what matters to it, the rest is a wide, plain spool.
#pragma once

#include <numbers>

#include <catch2/catch.hpp>

#include "lay/lay.h"
#include "plan/lay_plan.h"
#include "usual_fiber.h"

namespace laywright::testing {

// 0.25 mm fiber on a 150 mm barrel, 95 mm wide; stops where the fiber just touches the flanges.
inline PlanDraft plain_draft() {
  PlanDraft draft;
  draft.title = "test";
  draft.spool.barrel_diameter_mm = 2.0 * usual::radius;
  draft.spool.flange_diameter_mm = 236.0;
  draft.spool.inside_width_mm = 95.0;
  draft.fiber.diameter_mm = usual::d;
  draft.fiber.friction = 0.5;
  draft.traverse.pitch_mm = 0.26;
  draft.traverse.left_stop_mm = 0.125;
  draft.traverse.right_stop_mm = 0.125;
  draft.traverse.free_length_mm = 100.0;
  draft.wind.turns = 100.0;
  return draft;
}

// The same, narrow and loosely wound, of fiber whose diameter has this sigma.
inline PlanDraft scattered_draft(double sigma_mm) {
  PlanDraft draft = plain_draft();
  draft.spool.inside_width_mm = 12.0;
  draft.fiber.diameter_scatter_mm = sigma_mm;
  draft.fiber.scatter_length_mm = 5'000.0;
  draft.traverse.pitch_mm = 0.29;
  draft.traverse.free_length_mm = 20.0;
  draft.wind.turns = 200.0;
  return draft;
}

// Parallel-turn winding of 1 mm wire: barrel 100, width 20.5, so n turns in (n + 1/2) d; the guide at the wire.
inline PlanDraft mini_spool() {
  PlanDraft draft = plain_draft();
  draft.spool.barrel_diameter_mm = 100.0;
  draft.spool.flange_diameter_mm = 140.0;
  draft.spool.inside_width_mm = 20.5;
  draft.fiber.diameter_mm = 1.0;
  draft.traverse.motion = Motion::stepped;
  draft.traverse.step_angle_rad = std::numbers::pi / 4.0;
  draft.traverse.pitch_mm = 1.0;
  draft.traverse.left_stop_mm = 0.5;
  draft.traverse.right_stop_mm = 0.5;
  draft.traverse.free_length_mm = 0.0;
  return draft;
}

inline Plan sound(const PlanDraft& draft) {
  const Result<Plan> plan = check(draft);
  for (const Issue& issue : plan.issues()) INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

inline Build laid(const PlanDraft& draft, const LaySettings& settings = {}) {
  Progress progress;
  Result<Build> build = lay(sound(draft), settings, progress);
  REQUIRE(build.ok());
  return std::move(build).value();
}

}  // namespace laywright::testing
