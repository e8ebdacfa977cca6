// How far close layers are in order, and plans that differ in how the turns of a double stroke come out.
#pragma once

#include <algorithm>
#include <cstddef>

#include "measure/measurements.h"
#include "plan/guide_cycle.h"
#include "plan/lay_plan.h"

namespace laywright::bench {

// The same with a pitch at which a double stroke has so many turns of the spool.
inline PlanDraft with_turns(PlanDraft draft, double in_double_stroke) {
  draft.traverse.pitch_mm *= winding_ratio(guide_cycle(draft.spool, draft.traverse)) / in_double_stroke;
  return draft;
}

// Crossings of the layer below in a turn, of the layers from `from` up to `to` (from 0, without the last).
inline double crossings_in_turn(const Measurements& measured, std::size_t from, std::size_t to) {
  double crossings = 0.0, turns = 0.0;
  for (std::size_t i = from; i < std::min(to, measured.layers.size()); ++i) {
    crossings += measured.layers[i].crossings;
    turns += measured.layers[i].turns;
  }
  return turns > 0.0 ? crossings / turns : 0.0;
}

}  // namespace laywright::bench
