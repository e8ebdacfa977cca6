// Spools that were never wound: a plan with a hidden flaw, read off while it is wound.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "advise/synthetic_spool.h"
#include "follow/follow.h"

namespace laywright::testing {

// Twelve layers of some 53 turns each, good as planned.
inline PlanDraft followed_draft() {
  PlanDraft draft = narrow_draft();
  draft.title = "followed";
  draft.spool.inside_width_mm = 14.0;
  draft.traverse.left_stop_mm = 0.1;
  draft.traverse.right_stop_mm = 0.1;
  draft.traverse.free_length_mm = 30.0;
  draft.wind.turns = 640.0;
  return draft;
}

// Counter and three diameters at the end of each of so many layers, with the errors of a careful reader.
inline AsWound read_off(const PlanDraft& hidden, int layers, std::uint64_t seed) {
  return synthetic_spool(hidden, layers, {.turns = 0.3, .diameter_mm = 0.02}, seed);
}

inline FollowSettings follow_settings() {
  FollowSettings settings;
  settings.lay.fidelity = 0.3;
  settings.threads = 2;
  settings.errors.diameter_mm = 0.02;
  settings.errors.turns_share = 0.01;
  return settings;
}

inline Followed followed(const PlanDraft& plan, const AsWound& read,
                         const FollowSettings& settings = follow_settings()) {
  Progress progress;
  Result<Followed> result = follow(checked(plan), read, settings, progress);
  if (!result.ok()) throw std::logic_error(to_text(result.issues().front()));
  return std::move(result).value();
}

}  // namespace laywright::testing
