// Spools that were never wound: a plan with a hidden flaw, read off while it is wound.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "advise/narrow_plan.h"
#include "base/random.h"
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

// Counter, three diameters and the width at the end of each of so many layers, with the errors of a careful reader.
inline AsWound read_off(const PlanDraft& hidden, int layers, std::uint64_t seed) {
  PlanDraft begun = hidden;
  const double stroke = hidden.spool.inside_width_mm - hidden.traverse.left_stop_mm - hidden.traverse.right_stop_mm;
  begun.wind.turns = (layers + 0.5) * (stroke / hidden.traverse.pitch_mm + hidden.traverse.reversal.turns +
                                       hidden.traverse.reversal.lost_motion_mm / hidden.traverse.pitch_mm);
  const Wound spool = wound(begun);
  Random random(seed);
  AsWound read;
  read.file = "readings.csv";
  double turns = 0.0;
  for (int layer = 1; layer <= layers; ++layer) {
    const LayerRow& row = spool.measurements.layers[static_cast<std::size_t>(layer) - 1];
    turns += row.turns;
    Reading reading;
    reading.layer = layer;
    reading.counter_turns = turns + 0.3 * random.normal();
    for (std::size_t zone = 0; zone < 3; ++zone)
      reading.diameter_mm[zone] = row.outer_diameter_mm[zone] + 0.02 * random.normal();
    read.readings.push_back(reading);
  }
  return read;
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
