// take_up() on winds whose figures follow by hand, and on laid ones.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "figures/hand_wound.h"
#include "model/wound.h"
#include "takeup/formulas.h"
#include "takeup/takeup_run.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

constexpr double pi = std::numbers::pi;

// The hand-wound plan (18 turns of 1 mm in two layers, centre lines at radius 10.5 and 11.5), with all that a machine
// needs: 60 m/min, 2 N, a clutch of 0.1 N m at 0.5 A, a ceiling of 1000 rpm.
PlanDraft full_draft() {
  PlanDraft draft = hand_plan().draft();
  draft.spool.mass_kg = 0.5;
  draft.fiber.linear_mass_g_per_km = 7000.0;
  draft.fiber.core_diameter_mm = 0.8;
  draft.fiber.modulus_MPa = 1000.0;
  draft.fiber.max_tension_N = 4.0;
  draft.wind.tension_N = 2.0;
  draft.wind.line_speed_mm_per_s = 1000.0;
  Takeup takeup;
  takeup.torque_at_full_current_Nmm = 100.0;
  takeup.full_current_A = 0.5;
  takeup.speed_ceiling_rpm = 1000.0;
  takeup.length_stop = LengthStop::stop;
  takeup.reaction_time_s = 0.25;
  draft.takeup = takeup;
  return draft;
}

Plan sound(const PlanDraft& draft) {
  const Result<Plan> plan = check(draft);
  for (const Issue& issue : plan.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(plan.ok());
  return plan.value();
}

TakeupRun run_of(const PlanDraft& draft, const Build& build) {
  const Plan plan = sound(draft);
  Progress progress;
  return take_up(plan, build, measure(plan, build, progress), progress);
}

TakeupRun run_of(const PlanDraft& draft) { return run_of(draft, hand_build()); }

const MachineWarning* warning_of(const TakeupRun& run, MachineWarningKind kind) {
  const auto found =
      std::find_if(run.warnings.begin(), run.warnings.end(), [&](const auto& w) { return w.kind == kind; });
  return found == run.warnings.end() ? nullptr : &*found;
}

double figure_of(const MachineWarning& warning, const std::string& name) {
  for (const auto& figure : warning.figures) {
    if (figure.name == name) return figure.value;
  }
  FAIL("no figure " << name);
  return 0.0;
}

}  // namespace

TEST_CASE("curves of two layers, by hand") {
  const TakeupRun run = run_of(full_draft());
  const MachineCurves& c = run.curves;
  REQUIRE(c.length_mm.size() > 240);
  CHECK(c.length_mm.front() == 0.0);
  CHECK(c.length_mm.back() == Approx(hand_build().length_mm).epsilon(1e-3));
  CHECK(std::is_sorted(c.length_mm.begin(), c.length_mm.end()));
  // In the middle of each layer, away from the climb between them.
  for (const bool upper : {false, true}) {
    const double radius = upper ? 11.5 : 10.5;
    const double wanted = upper ? 0.75 : 0.25;
    const auto i = static_cast<std::size_t>(
        std::lower_bound(c.length_mm.begin(), c.length_mm.end(), wanted * c.length_mm.back()) - c.length_mm.begin());
    CAPTURE(radius);
    const double per_turn = std::hypot(2.0 * pi * radius, 1.0);
    const double rpm = 60'000.0 / per_turn;
    CHECK(c.layer[i] == (upper ? 2 : 1));
    CHECK(c.radius_mm[i] == Approx(radius).epsilon(1e-6));
    CHECK(c.spool_rpm[i] == Approx(rpm).epsilon(1e-3));
    CHECK(c.traverse_mm_per_s[i] == Approx(rpm / 60.0 * 1.0).epsilon(1e-3));
    CHECK(c.reversals_per_min[i] == Approx(rpm / 9.0).epsilon(2e-2));
    CHECK(c.tension_N[i] == Approx(2.0 * 10.5 / radius).epsilon(1e-6));
    CHECK(c.torque_Nmm[i] == Approx(21.0).epsilon(1e-6));
    CHECK(c.current_A[i] == Approx(0.5 * 0.21).epsilon(1e-6));
    CHECK(c.slip_rpm[i] == Approx(1000.0 - rpm).epsilon(1e-2));
    CHECK(c.clutch_heat_W[i] == Approx(0.021 * (1000.0 - rpm) * 2.0 * pi / 60.0).epsilon(1e-2));
    CHECK(c.stress_MPa[i] == Approx(c.tension_N[i] / (pi * 0.16)).epsilon(1e-9));
    CHECK(c.strain[i] == Approx(c.stress_MPa[i] / 1000.0).epsilon(1e-9));
    CHECK(c.load_share[i] == Approx(c.tension_N[i] / 4.0).epsilon(1e-9));
    CHECK(c.time_s[i] == Approx(c.length_mm[i] / 1000.0));
    CHECK(c.ramp_torque_Nmm[i] == Approx(1e3 * c.inertia_kg_m2[i] * c.spool_rpm[i] * pi / 30.0 / 10.0));
  }
  // All of the spool's mass at the rim of 20 mm, and two rings of fiber.
  const double length1 = 9.0 * std::hypot(2.0 * pi * 10.5, 1.0), length2 = 9.0 * std::hypot(2.0 * pi * 11.5, 1.0);
  CHECK(c.inertia_kg_m2.front() == Approx(0.5 * 0.0004));
  CHECK(c.inertia_kg_m2.back() ==
        Approx(0.5 * 0.0004 + 7e-6 * (length1 * 10.5e-3 * 10.5e-3 + length2 * 11.5e-3 * 11.5e-3)).epsilon(1e-3));
  CHECK(run.time_s == Approx(hand_build().length_mm / 1000.0).epsilon(1e-3));
  CHECK(run.least_speed_ceiling_rpm == Approx(60'000.0 / std::hypot(2.0 * pi * 10.5, 1.0)).epsilon(1e-3));
  CHECK(run.missing.empty());
}

TEST_CASE("a wind that ends within its first layer turns back as often as its guide would") {
  PlanDraft draft = full_draft();
  draft.wind.turns = 2.0;
  const Plan plan = sound(draft);
  const testing::Wound wound = testing::wound(plan);
  Progress progress;
  const TakeupRun run = take_up(plan, wound.build, wound.measured, progress);
  REQUIRE_FALSE(run.curves.reversals_per_turn.empty());
  // 9 mm from stop to stop at 1 mm a turn.
  for (const double reversals : run.curves.reversals_per_turn) CHECK(reversals == Approx(1.0 / 9.0));
}

TEST_CASE("constant tension and taper over the same two layers") {
  PlanDraft draft = full_draft();
  draft.takeup->control = TensionControl::constant_tension;
  TakeupRun run = run_of(draft);
  CHECK(run.curves.tension_N.back() == Approx(2.0));
  CHECK(run.curves.torque_Nmm.back() == Approx(23.0));
  CHECK(run.curves.current_A.back() == Approx(0.5 * 0.23));
  draft.takeup->control = TensionControl::taper;
  draft.takeup->taper = 0.3;
  run = run_of(draft);
  CHECK(run.curves.tension_N.back() == Approx(2.0 * (1.0 - 0.3 * (1.0 - 10.5 / 11.5))));
}

TEST_CASE("what the plan does not give is absent, and is named") {
  PlanDraft draft = hand_plan().draft();
  const TakeupRun bare = run_of(draft);
  CHECK(bare.curves.spool_rpm.empty());
  CHECK(bare.curves.tension_N.empty());
  CHECK(bare.curves.inertia_kg_m2.empty());
  CHECK_FALSE(bare.time_s);
  CHECK_FALSE(bare.pressure);
  CHECK_FALSE(bare.counter.set_to_mm);
  CHECK(bare.missing.size() == 10);
  CHECK(bare.missing.front().key == "wind.line_speed");
  CHECK(bare.checkpoints.size() == 2);

  draft.wind.tension_N = 2.0;
  const TakeupRun pulled = run_of(draft);
  CHECK(pulled.curves.tension_N.empty());  // unknown without [takeup]
  REQUIRE(pulled.pressure);
  CHECK(pulled.pressure->tension_assumed_constant);
}

TEST_CASE("checkpoints: counter, turns, time, and the diameter then") {
  const TakeupRun run = run_of(full_draft());
  REQUIRE(run.checkpoints.size() == 2);
  CHECK(run.checkpoints[0].layer == 1);
  CHECK(run.checkpoints[0].turns == Approx(9.0));
  CHECK(run.checkpoints[0].length_mm == Approx(9.0 * std::hypot(2.0 * pi * 10.5, 1.0)).epsilon(2e-3));
  CHECK_FALSE(run.checkpoints[0].at_end);
  CHECK(run.checkpoints[1].at_end);
  CHECK(run.checkpoints[1].turns == 18.0);
  for (const std::size_t zone : {0U, 1U, 2U}) {
    CHECK(run.checkpoints[0].outer_diameter_mm[zone] == Approx(22.0).epsilon(1e-2));
    CHECK(run.checkpoints[1].outer_diameter_mm[zone] == Approx(24.0).epsilon(1e-2));
  }
  const TakeupRun many = run_of(full_draft(), helical_build(130, 9, 1.0, 10.5, 0.05));
  std::vector<int> layers;
  for (const Checkpoint& checkpoint : many.checkpoints) layers.push_back(checkpoint.layer);
  CHECK(layers == std::vector<int>{1, 2, 5, 10, 20, 50, 100, 130});
}

TEST_CASE("the length counter: lead, overrun, run-down") {
  PlanDraft draft = full_draft();
  const TakeupRun stops = run_of(draft);
  CHECK(stops.counter.lead_mm == Approx(250.0));
  CHECK(stops.counter.set_to_mm == Approx(stops.counter.end_mm - 250.0));
  CHECK(stops.counter.per_ramp_second_mm == Approx(500.0));
  CHECK(warning_of(stops, MachineWarningKind::length_overrun) == nullptr);
  draft.takeup->length_stop = LengthStop::signal;
  const TakeupRun signals = run_of(draft);
  const MachineWarning* overrun = warning_of(signals, MachineWarningKind::length_overrun);
  REQUIRE(overrun != nullptr);
  CHECK(figure_of(*overrun, "overrun_m") == Approx(0.25));
}

TEST_CASE("steps of the wind stand where their layers begin") {
  PlanDraft draft = full_draft();
  draft.wind.steps = {{2, 1.25, std::nullopt, 0.75}, {9, 1.5, std::nullopt, std::nullopt}};
  const TakeupRun run = run_of(draft);
  REQUIRE(run.steps.size() == 2);
  CHECK(run.steps[0].turns == Approx(9.0));
  CHECK(run.steps[0].pitch_mm == 1.25);
  CHECK(run.steps[0].left_stop_mm == 0.5);
  CHECK(run.steps[0].right_stop_mm == 0.75);
  CHECK_FALSE(run.steps[1].length_mm);
  CHECK(run.steps[1].right_stop_mm == 0.75);
}

TEST_CASE("the fleet angle of a held fiber is its lag over the free length") {
  // L 200, p .30, barrel 150: lag .127324 mm behind the guide (L p / (2 pi R), by hand), here on the fiber's radius.
  PlanDraft draft = hand_plan().draft();
  draft.spool = {150.0, 236.0, 95.0, 0.0, 0.0, 0.0, {}};
  draft.fiber.diameter_mm = 0.25;
  draft.fiber.friction = Fiber::held;
  draft.traverse.pitch_mm = 0.30;
  draft.traverse.free_length_mm = 200.0;
  draft.wind.turns = 100.0;
  const Plan plan = sound(draft);
  const testing::Wound wound = testing::wound(plan);
  Progress progress;
  const TakeupRun run = take_up(plan, wound.build, wound.measured, progress);
  REQUIRE(run.fleet);
  const double lag = 0.127324 * 75.0 / 75.125;
  CHECK(run.fleet->steady_deg == Approx(std::atan(lag / 200.0) * 180.0 / pi).epsilon(1e-5));
  CHECK(run.fleet->greatest_deg == Approx(run.fleet->steady_deg).epsilon(2e-3));
  CHECK(warning_of(run, MachineWarningKind::fleet_angle) == nullptr);
}

TEST_CASE("inertia of a laid spool is that of a ring of its mass") {
  const Plan plan = testing::sample("magnet-wire");
  const testing::Wound wound = testing::wound(plan, 0.25);
  Progress progress;
  const TakeupRun run = take_up(plan, wound.build, wound.measured, progress);
  const double outer = 0.5 * wound.measured.outer_diameter.middle_mm, inner = 31.5;
  const double mass = *wound.measured.fiber_mass_kg;
  const double density = mass / (80.0 * pi * (outer * outer - inner * inner));
  const double spool = 0.12 * 0.05 * 0.05;
  CHECK(run.curves.inertia_kg_m2.back() - spool ==
        Approx(ring_inertia_kg_m2(density, 80.0, outer, inner)).epsilon(0.01));
  // Clutch: 1 N on the empty barrel, of 0.1 N m at 0.5 A.
  CHECK(run.curves.current_A.front() == Approx(0.5 * 31.61 / 100.0).epsilon(1e-3));
}

TEST_CASE("the pressure estimate: one layer, and the sum of all") {
  // One layer: p = T / (r pitch), by hand.
  const TakeupRun run = run_of(full_draft());
  REQUIRE(run.pressure);
  CHECK(run.pressure->one_layer_MPa == Approx(2.0 / (10.0 * 1.0)).epsilon(1e-8));
  CHECK(run.pressure->stiff.pressure_MPa.back() == Approx(0.0).margin(1e-12));
  CHECK(run.pressure->soft.barrel_MPa < run.pressure->stiff.barrel_MPa);
  // A closely laid thin ring of many layers on a rigid barrel presses with the pull of all: sum of T / (r pitch).
  PlanDraft draft = full_draft();
  draft.takeup->control = TensionControl::constant_tension;
  const TakeupRun thin = run_of(draft, helical_build(2, 9, 1.0, 10.5, 1.0));
  CHECK(thin.pressure->soft.barrel_MPa > thin.pressure->one_layer_MPa);
  CHECK(thin.pressure->stiff.barrel_MPa == Approx(2.0 * 2.0 / (11.0 * 1.0)).epsilon(0.1));
}

TEST_CASE("every warning comes at its limit, and not before") {
  const auto has = [](const PlanDraft& draft, MachineWarningKind kind) {
    return warning_of(run_of(draft), kind) != nullptr;
  };
  using Kind = MachineWarningKind;
  const double empty_rpm = *run_of(full_draft()).least_speed_ceiling_rpm;

  PlanDraft draft = full_draft();
  for (const double factor : {0.999, 1.001}) {
    draft.takeup->speed_ceiling_rpm = factor * empty_rpm;
    CHECK(has(draft, Kind::speed_ceiling) == (factor < 1.0));
  }
  draft = full_draft();
  for (const double factor : {0.999, 1.001}) {
    draft.takeup->torque_at_full_current_Nmm = factor * 21.0;
    CHECK(has(draft, Kind::clutch_range) == (factor < 1.0));
  }
  draft = full_draft();
  const double least = least_tension_N(7000.0, 1000.0, 11.5, bending_stiffness_Nmm2(1000.0, 0.8));
  draft.takeup->control = TensionControl::constant_tension;
  // The stiffness counts most on the barrel.
  const double at_barrel = least_tension_N(7000.0, 1000.0, 10.5, bending_stiffness_Nmm2(1000.0, 0.8));
  for (const double factor : {0.99, 1.01}) {
    draft.wind.tension_N = factor * std::max(least, at_barrel);
    CHECK(has(draft, Kind::tension_too_low) == (factor < 1.0));
  }
  draft = full_draft();
  for (const double friction : {0.006, 0.0065}) {  // p / (pi L) = 1 / (50 pi) = .006366
    draft.fiber.friction = friction;
    CHECK(has(draft, Kind::reversal_friction) == (friction < 0.00636));
  }
  draft = full_draft();
  for (const double clearance : {7.5, 8.5}) {  // rim at 20, surface at 12
    draft.limits.rim_clearance_mm = clearance;
    CHECK(has(draft, Kind::rim_clearance) == (clearance > 8.0));
  }
  Build stopped = hand_build();
  stopped.stopped_by = StopReason::rim;
  CHECK(warning_of(run_of(full_draft(), stopped), Kind::rim_reached) != nullptr);
  CHECK_FALSE(has(full_draft(), Kind::rim_reached));
}

TEST_CASE("a barrel that is smaller where the wind begins later pulls harder than planned") {
  // Constant torque from the thick end: at the thin end the same torque pulls more.
  PlanDraft draft = hand_plan().draft();
  draft.spool.barrel_taper_mm = -4.0;
  draft.wind.turns = 8.0;
  draft.wind.tension_N = 2.0;
  draft.fiber.max_tension_N = 2.1;
  draft.takeup = Takeup{};
  const Plan plan = sound(draft);
  const testing::Wound wound = testing::wound(plan);
  Progress progress;
  const TakeupRun run = take_up(plan, wound.build, wound.measured, progress);
  const MachineWarning* warning = warning_of(run, MachineWarningKind::tension_too_high);
  REQUIRE(warning != nullptr);
  CHECK(figure_of(*warning, "tension_N") > 2.1);
  CHECK_THAT(warning->text, Contains("more than the fiber's greatest tension of 2.10 N"));
}

TEST_CASE("ramps: slack when started too soon, overload when stopped too soon") {
  // J / r x v / r against the pull: by hand at the full spool.
  const TakeupRun run = run_of(full_draft());
  const double radius = 11.5, inertia = run.curves.inertia_kg_m2.back();
  const double pull_seconds = inertia * 1e6 * 1e-3 * 1000.0 / (radius * radius);
  REQUIRE(run.hold.shortest_start_s);
  CHECK(*run.hold.shortest_start_s == Approx(pull_seconds / (2.0 * 10.5 / 11.5)).epsilon(0.1));
  REQUIRE(run.hold.shortest_stop_s);
  CHECK(*run.hold.shortest_stop_s > 0.0);
}

TEST_CASE("an empty build has no machine side, and no crash") {
  Build build;
  build.stations_per_turn = 8;
  build.fiber_diameter_mm = 1.0;
  Progress progress;
  const TakeupRun run = take_up(sound(full_draft()), build, Measurements(), progress);
  CHECK(run.curves.length_mm.empty());
  CHECK(run.checkpoints.empty());
}
