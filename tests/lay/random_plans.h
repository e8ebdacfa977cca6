// Sound plans drawn at random from a seed, over the whole range that is wound: every kind of reversal and motion,
// thin and thick fiber, no friction to held, stops inside and outside the flanges.
#pragma once

#include <cstdint>
#include <vector>

#include "lay/lay.h"
#include "plan/lay_plan.h"

namespace laywright::random_plans {

// What a test needs to keep out.
struct Wanted {
  bool scatter = true;  // of stops and pitch, and the eye's play
  bool bending = true;
  bool skewed_spool = true;  // barrel taper, flange run-out
  double turns = 150.0;      // about so many (the wind may also be given by length or diameter)
  bool diameter_scatter = false;
};

[[nodiscard]] PlanDraft draft(std::uint64_t seed, const Wanted& wanted = {});

// The plan of a draft that must be sound; throws with its issues when it is not.
[[nodiscard]] Plan plan_of(const PlanDraft& draft);

[[nodiscard]] Build laid(const Plan& plan, std::uint64_t seed = 1, double fidelity = 1.0);

// One line that tells the draft's numbers apart, for messages.
[[nodiscard]] std::string in_words(const PlanDraft& draft);

}  // namespace laywright::random_plans
