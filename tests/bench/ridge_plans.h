// Winds for the comparison of ridges and heaps: a narrow spool with a dwell at its stops, and a guide that stands far from
// flanges. Each draw has its stops elsewhere by up to `shift_mm`.
#pragma once

#include <cstddef>
#include <stdexcept>

#include "base/random.h"
#include "plan/lay_plan.h"
#include "plan/plan_file.h"

namespace laywright::bench {

inline constexpr double d_mm = 0.25, friction = 0.5, pitch_mm = 0.26;
inline constexpr double length_mm = 100.0, near_length_mm = 5.0;  // free, of the fiber
inline constexpr double shift_mm = 0.01;
inline constexpr double ridge_width_mm = 12.0, heap_width_mm = 22.5;
inline constexpr int strokes = 8;
inline constexpr std::size_t heap_turns = 60;
inline constexpr double heap_reach = 20.0;

inline double uniform(Random& random, double low, double high) { return low + (high - low) * random.uniform(); }

inline PlanDraft spool(double width_mm, double dwell_turns, double left_stop_mm, double right_stop_mm) {
  PlanDraft draft;
  draft.spool.barrel_diameter_mm = 150.0;
  draft.spool.flange_diameter_mm = 190.0;
  draft.spool.inside_width_mm = width_mm;
  draft.fiber.diameter_mm = d_mm;
  draft.fiber.friction = friction;
  draft.traverse.pitch_mm = pitch_mm;
  draft.traverse.free_length_mm = length_mm;
  draft.traverse.left_stop_mm = left_stop_mm;
  draft.traverse.right_stop_mm = right_stop_mm;
  if (dwell_turns > 0.0) {
    draft.traverse.reversal.kind = ReversalKind::dwell;
    draft.traverse.reversal.turns = dwell_turns;
  }
  return draft;
}

inline Plan sound(const PlanDraft& draft) {
  const Result<Plan> plan = check(draft);
  if (!plan.ok()) throw std::runtime_error(to_text(plan.issues().front()));
  return plan.value();
}

// A core of the whole fiber that a pull of 20 N would double in length, under .5 N: it sinks 7.5 d before it is slack. Its
// shear modulus is less than a solid's, as in a yarn of many threads: twist adds a tenth to the tension.
inline PlanDraft softened(PlanDraft draft) {
  draft.wind.tension_N = 0.5;
  draft.fiber.core_diameter_mm = d_mm;
  draft.fiber.modulus_MPa = 407.4;
  draft.fiber.shear_modulus_MPa = 2.04;
  return draft;
}

// Whole strokes, the last dwell with them.
inline Plan ridge_plan(double dwell_turns, Random& random) {
  const double left = 0.5 * d_mm + uniform(random, -shift_mm, shift_mm);
  const double right = 0.5 * d_mm + uniform(random, -shift_mm, shift_mm);
  PlanDraft draft = spool(ridge_width_mm, dwell_turns, left, right);
  draft.wind.turns = strokes * ((ridge_width_mm - left - right) / pitch_mm + dwell_turns);
  return sound(draft);
}

// The guide goes a pitch and stands.
inline Plan bare_heap_plan(Random& random) {
  const double stop = 0.5 * heap_width_mm + uniform(random, -shift_mm, shift_mm);
  PlanDraft draft = spool(heap_width_mm, heap_turns, heap_width_mm - stop - pitch_mm, stop);
  draft.wind.turns = heap_turns + 1;
  return sound(draft);
}

// The guide lays one layer, dwells at the flange, too, comes back to the middle within a turn, and stands.
inline Plan layer_heap_plan(Random& random) {
  const double left = 0.5 * d_mm + uniform(random, -shift_mm, shift_mm);
  const double middle = 0.5 * heap_width_mm + uniform(random, -shift_mm, shift_mm);
  PlanDraft draft = spool(heap_width_mm, heap_turns, left, 0.5 * d_mm);
  WindStep back;
  back.from_layer = 2;
  back.left_stop_mm = middle;
  back.pitch_mm = heap_width_mm - 0.5 * d_mm - middle;
  draft.wind.steps = {back};
  draft.wind.turns = (heap_width_mm - left - 0.5 * d_mm) / pitch_mm + 2.0 * heap_turns + 1;
  return sound(draft);
}

}  // namespace laywright::bench
