#include "fuzz/drawn_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/size_estimate.h"

namespace laywright::fuzz {
namespace {

constexpr double pi = std::numbers::pi;

// Longer than any part that a plan may say.
constexpr double longest_mm = 10'000.0;

void draw_fiber(Bytes& bytes, PlanDraft& draft) {
  Fiber& fiber = draft.fiber;
  const double d = bytes.magnitude(0.02, 20.0);
  fiber.diameter_mm = d;
  switch (bytes.one_of(8)) {
    case 0: fiber.friction = 0.0; break;
    case 1: fiber.friction = Fiber::held; break;
    case 2: fiber.friction = bytes.between(0.0, 10.0); break;
    default: fiber.friction = bytes.between(0.0, 1.0);
  }
  if (bytes.once_in(4)) fiber.diameter_tolerance_mm = bytes.between(0.0, 0.49 * d);
  if (bytes.once_in(4)) fiber.linear_mass_g_per_km = bytes.magnitude(1e-6, 1e9);
  if (bytes.once_in(4)) fiber.max_tension_N = bytes.magnitude(1e-6, 1e7);
}

// Of any thickness against the fiber, down to one that is thinner.
void draw_barrel(Bytes& bytes, PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm;
  const double thinnest = bytes.once_in(8) ? 0.9 : 5.0;
  draft.spool.barrel_diameter_mm = std::min(0.5 * longest_mm, d * bytes.magnitude(thinnest, 2000.0));
  if (bytes.once_in(4)) {
    draft.fiber.min_bend_diameter_mm = draft.spool.barrel_diameter_mm * bytes.magnitude(0.01, 1.0);
  }
}

void draw_flanges(Bytes& bytes, PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm;
  Spool& spool = draft.spool;
  spool.inside_width_mm = std::min(longest_mm, d * bytes.magnitude(1.0, bytes.once_in(4) ? 400.0 : 40.0));
  const double height = d * bytes.magnitude(1.001, 30.0);
  spool.flange_diameter_mm = spool.barrel_diameter_mm + 2.0 * height;
  if (bytes.once_in(3)) spool.flange_taper_rad = bytes.between(0.0, pi / 3.0);
  switch (bytes.one_of(6)) {
    case 0: spool.barrel_taper_mm = bytes.between(-2.0 * d, 2.0 * d); break;
    case 1: {
      const double most = spool.inside_width_mm;
      spool.barrel_taper_mm =
          bytes.between(-std::min(most, 0.99 * spool.barrel_diameter_mm - d), std::min(most, 1.99 * height));
      break;
    }
    default: break;
  }
  if (bytes.once_in(3)) {
    const double closed = spool.inside_width_mm + 2.0 * height * std::tan(spool.flange_taper_rad) - d;
    const double most = std::min(0.999 * closed, 0.2 * spool.flange_diameter_mm);
    spool.flange_runout_mm = std::max(0.0, bytes.between(0.0, bytes.once_in(3) ? most : std::min(most, d)));
  }
  if (bytes.once_in(4)) spool.mass_kg = bytes.magnitude(1e-6, 1e6);
}

void draw_stops(Bytes& bytes, PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm;
  const double width = draft.spool.inside_width_mm;
  Traverse& traverse = draft.traverse;
  if (bytes.once_in(4)) {
    traverse.left_stop_mm = bytes.between(-2.0 * width, 2.0 * width);
    const double stroke = width * bytes.magnitude(1e-6, 4.0);
    traverse.right_stop_mm = width - traverse.left_stop_mm - stroke;
  } else {
    traverse.left_stop_mm = bytes.between(-2.0 * d, std::min(3.0 * d, 0.4 * width));
    traverse.right_stop_mm = bytes.between(-2.0 * d, std::min(3.0 * d, 0.4 * width));
  }
}

double stroke_of(const PlanDraft& draft) {
  return draft.spool.inside_width_mm - draft.traverse.left_stop_mm - draft.traverse.right_stop_mm;
}

void draw_motion(Bytes& bytes, PlanDraft& draft) {
  const double d = draft.fiber.diameter_mm;
  Traverse& traverse = draft.traverse;
  switch (bytes.one_of(4)) {
    case 0: traverse.pitch_mm = d * bytes.magnitude(0.01, 100.0); break;
    case 1: traverse.pitch_mm = d * bytes.magnitude(0.8, 8.0); break;
    default: traverse.pitch_mm = d * bytes.between(0.9, 1.3);
  }
  // Mostly what a plan may say.
  const double around = pi * draft.spool.least_barrel_diameter_mm();
  if (!bytes.once_in(16)) traverse.pitch_mm = std::min({traverse.pitch_mm, 4.0 * stroke_of(draft), around});
  traverse.start = bytes.once_in(2) ? Side::right : Side::left;
  switch (bytes.one_of(4)) {
    case 0: traverse.free_length_mm = 0.0; break;
    case 1: traverse.free_length_mm = bytes.magnitude(1e-6, 100'000.0); break;
    default: traverse.free_length_mm = d * bytes.magnitude(1.0, 2000.0);
  }
  if (bytes.once_in(3)) {
    traverse.motion = Motion::stepped;
    traverse.step_angle_rad = bytes.once_in(4) ? bytes.magnitude(1e-3, 2.0 * pi) : bytes.between(0.3, 2.0 * pi);
  }
  if (bytes.once_in(4)) traverse.guide_play_mm = bytes.between(0.0, 0.999 * std::min(stroke_of(draft), 1000.0));
  if (bytes.once_in(4)) traverse.pitch_scatter = bytes.between(0.0, 0.25);
}

void draw_reversal(Bytes& bytes, PlanDraft& draft) {
  Reversal& reversal = draft.traverse.reversal;
  const double stroke = stroke_of(draft);
  const bool stepped = draft.traverse.motion == Motion::stepped;
  reversal.kind = static_cast<ReversalKind>(bytes.one_of(stepped ? 2 : 3));
  if (reversal.kind == ReversalKind::dwell) reversal.turns = bytes.magnitude(1e-3, 30.0);
  if (reversal.kind == ReversalKind::ramp) {
    reversal.turns = std::min(1000.0, bytes.between(0.0, 2.0) * stroke / draft.traverse.pitch_mm);
  }
  if (bytes.once_in(4)) reversal.lost_motion_mm = bytes.between(0.0, 0.999 * std::min(stroke, 1000.0));
  if (bytes.once_in(4)) reversal.stop_scatter_mm = bytes.between(0.0, 0.0999 * std::min(stroke, 1000.0));
}

void draw_steps(Bytes& bytes, PlanDraft& draft) {
  const Traverse& traverse = draft.traverse;
  const double stroke = stroke_of(draft);
  int layer = 0;
  for (unsigned count = bytes.one_of(4); count > 0; --count) {
    WindStep step;
    layer += 1 + static_cast<int>(bytes.one_of(4));
    step.from_layer = layer;
    if (bytes.once_in(2)) step.pitch_mm = traverse.pitch_mm * bytes.magnitude(0.5, 2.0);
    if (bytes.once_in(2)) step.left_stop_mm = traverse.left_stop_mm + bytes.between(-0.4, 0.4) * stroke;
    if (bytes.once_in(2)) step.right_stop_mm = traverse.right_stop_mm + bytes.between(-0.4, 0.4) * stroke;
    draft.wind.steps.push_back(step);
  }
}

void draw_stiffness(Bytes& bytes, PlanDraft& draft) {
  Fiber& fiber = draft.fiber;
  if (bytes.once_in(3)) draft.wind.tension_N = bytes.magnitude(1e-6, fiber.max_tension_N.value_or(1e7));
  if (!bytes.once_in(3)) return;
  fiber.core_diameter_mm = fiber.diameter_mm * bytes.magnitude(0.01, 1.0);
  fiber.modulus_MPa = bytes.magnitude(1e-6, 1e7);
}

void draw_takeup(Bytes& bytes, PlanDraft& draft) {
  if (bytes.once_in(3)) draft.wind.line_speed_mm_per_s = bytes.magnitude(1e-6, 1e6);
  if (!bytes.once_in(3)) return;
  Takeup& takeup = draft.takeup.emplace();
  takeup.control = static_cast<TensionControl>(bytes.one_of(3));
  takeup.length_stop = static_cast<LengthStop>(bytes.one_of(3));
  takeup.taper = bytes.between(0.0, 1.0);
  takeup.reaction_time_s = bytes.between(0.0, 3600.0);
  if (bytes.once_in(2)) takeup.torque_at_full_current_Nmm = bytes.magnitude(1e-6, 1e9);
  if (bytes.once_in(2)) takeup.full_current_A = bytes.magnitude(1e-6, 1e5);
  if (bytes.once_in(2)) takeup.speed_ceiling_rpm = bytes.magnitude(1e-6, 1e6);
}

void draw_limits(Bytes& bytes, PlanDraft& draft) {
  Limits& limits = draft.limits;
  if (bytes.once_in(3)) limits.gap_d = bytes.once_in(4) ? 0.0 : bytes.magnitude(1e-3, 1000.0);
  if (bytes.once_in(3)) limits.pile_up_d = bytes.once_in(4) ? 0.0 : bytes.magnitude(1e-3, 1000.0);
  if (!bytes.once_in(3)) return;
  const double depth = 0.5 * (draft.spool.flange_diameter_mm - draft.spool.barrel_diameter_mm);
  limits.rim_clearance_mm = bytes.between(0.0, 0.999 * depth);
}

// After all else: what the wind may take follows from the rest.
void draw_end(Bytes& bytes, double most_turns, PlanDraft& draft) {
  const Spool& spool = draft.spool;
  const double d = draft.fiber.diameter_mm;
  const double turns = most_turns * bytes.magnitude(1e-4, 1.0);
  const double thin = spool.least_barrel_diameter_mm();
  draft.wind.turns.reset();
  switch (bytes.one_of(3)) {
    case 0: draft.wind.turns = turns; break;
    case 1: draft.wind.length_mm = turns * pi * (thin + d); break;
    default: {
      const double thick = std::max(spool.barrel_diameter_mm, spool.barrel_diameter_mm + spool.barrel_taper_mm);
      const double depth = 0.8 * turns * d * d / spool.inside_width_mm;
      draft.wind.diameter_mm = std::min(spool.flange_diameter_mm, thick + std::max(1e-3 * d, 2.0 * depth));
    }
  }
}

}  // namespace

DrawnWind drawn_wind(Bytes& bytes, double most_nodes) {
  DrawnWind wind;
  PlanDraft& draft = wind.draft;
  draft.title = "drawn";
  draw_fiber(bytes, draft);
  draw_barrel(bytes, draft);
  draw_flanges(bytes, draft);
  draw_stops(bytes, draft);
  draw_motion(bytes, draft);
  draw_reversal(bytes, draft);
  draw_steps(bytes, draft);
  draw_stiffness(bytes, draft);
  draw_takeup(bytes, draft);
  draw_limits(bytes, draft);
  constexpr double fidelities[] = {1.0, 1.0, 1.0, 1.0, 0.25, 0.5, 2.0, 0.05};
  wind.settings.fidelity = fidelities[bytes.one_of(8)];
  wind.settings.seed = bytes.byte();
  draft.wind.turns = 1.0;
  // A fine mesh takes long to come to rest, node by node.
  const double stations = wind.settings.fidelity * std::max(32.0, stations_estimate(draft));
  draw_end(bytes, std::min(most_nodes, 1.5e6 / stations) / stations, draft);
  return wind;
}

}  // namespace laywright::fuzz
