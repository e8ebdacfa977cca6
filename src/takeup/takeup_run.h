// What the machine does over a wind: curves over the wound length, checkpoints, the length counter, the load on fiber
// and spool, warnings.
//
// What a plan does not give is absent: an empty curve, an optional without a value; `missing` says which key to fill
// in. Lengths mm, forces N, angles deg, other units in the names.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/progress.h"
#include "lay/build.h"
#include "measure/measurements.h"
#include "payoff/payoff.h"
#include "plan/lay_plan.h"

namespace laywright {

// One entry per sample: a few hundred lengths, evenly apart, and the end of each layer (of many layers, some). Radius
// and length per turn are those of the turn that is laid there.
struct MachineCurves {
  std::vector<double> length_mm, turn, radius_mm;
  std::vector<int> layer;
  std::vector<double> reversals_per_turn;

  // With wind.line_speed.
  std::vector<double> time_s, spool_rpm, traverse_mm_per_s, reversals_per_min;
  // With wind.tension and takeup.control.
  std::vector<double> tension_N, torque_Nmm;
  // With takeup.torque_at_full_current and full_current, or from a clutch that was measured in A (machine.dials.tension with
  // a diameter); empty where it would have to be more or less than was measured.
  std::vector<double> current_A;
  std::vector<double> slip_rpm, clutch_heat_W;  // with takeup.speed_ceiling: the drive runs at it; heat with torque
  // With fiber.linear_mass: fiber and, where spool.mass is given, at most the spool (all its mass at the rim).
  std::vector<double> inertia_kg_m2;
  std::vector<double> ramp_torque_Nmm;  // with line speed: to line speed, or to rest, in `stated_ramp_s`
  // With tension and fiber.core_diameter, fiber.modulus, fiber.max_tension.
  std::vector<double> stress_MPa, strain, load_share;
};

inline constexpr double stated_ramp_s = 10.0;

struct Checkpoint {
  int layer = 0;
  double length_mm = 0.0;  // what the counter shows when the layer is complete
  double turns = 0.0;
  std::optional<double> time_s;
  std::array<double, 3> outer_diameter_mm{};  // left, middle, right
  std::optional<double> counter_reading;      // with machine.counter: what that shows then, in its unit
  bool at_end = false;                        // the end of the wind, within a layer or after it
};

// The layers with a checkpoint: 1, 2, 5, 10, 20, 50, ...; the next one after `layer`.
[[nodiscard]] std::size_t next_checkpoint_layer(std::size_t layer);

// Where settings change: one entry per [[wind.step]], with the values that then hold.
struct StepPlace {
  int from_layer = 0;
  std::optional<double> length_mm, turns;  // absent when the wind ends before
  std::optional<double> counter_reading;   // as of a checkpoint
  double pitch_mm = 0.0, left_stop_mm = 0.0, right_stop_mm = 0.0;
};

struct CounterSetting {
  LengthStop mode = LengthStop::stop;
  double end_mm = 0.0;  // the length that is wanted
  double reaction_time_s = 0.0;
  // How far the line runs on: its speed x the reaction time, and half of that x the stop ramp where the plan gives it.
  std::optional<double> lead_mm;
  std::optional<double> set_to_mm;           // set the counter to this, so that the wind ends at end_mm
  std::optional<double> per_ramp_second_mm;  // further travel for each second of an even run-down from line speed
  // With machine.counter: what it shows where it is set to, a whole step of it, and what is wound then, the lead included.
  struct Reading {
    double reading = 0.0;
    std::string unit;
    double end_mm = 0.0;
  };
  std::optional<Reading> reading;
};

// Angle between the free fiber and a plane square to the axis.
struct FleetAngle {
  double steady_deg = 0.0;    // behind the moving guide: pitch / (2 pi r) at the barrel
  double greatest_deg = 0.0;  // between the guide and where the fiber lies, anywhere in the build
  double at_turn = 0.0;
};

// Pulls between which the machine must stay, at the radius where it matters most.
struct HoldLimits {
  std::optional<double> least_tension_N;         // to lie down on the spool (formulas.h)
  std::optional<double> friction_at_reversal;    // that the barrel must have
  std::optional<double> capstan_ratio_per_turn;  // hold of the start end, by the fiber's own friction
  std::optional<double> shortest_start_s;        // below it a clutch cannot bring the spool along and the fiber sags
  std::optional<double> shortest_stop_s;         // below it the spool's run-down pulls more than fiber.max_tension
};

// Guide at a reversal, at the greatest spool speed.
struct GuideReversal {
  double speed_mm_per_s = 0.0;
  std::optional<double> time_s;                  // of the ramp or dwell; absent when instant
  std::optional<double> acceleration_mm_per_s2;  // of a ramp
  std::optional<double> hidden_time_s;           // a quicker reversal is hidden by the lag: L ln 2 / line speed
};

// Estimates of the linear wound-roll model on a rigid barrel, for a winding that is as stiff radially as around
// (stiff) and one ten times as soft as the square root goes (soft). Tension over radius and the build's fill give the
// wound stress. See wound_roll.h.
struct PressureEstimate {
  struct Profile {
    double stiffness_ratio = 1.0;
    std::vector<double> pressure_MPa, hoop_MPa;  // at radius_mm
    double barrel_MPa = 0.0;
    double flange_force_N = 0.0;  // at most, as if the pressure acted sideways in full
    double least_hoop_MPa = 0.0;
  };
  std::vector<double> radius_mm;  // from the barrel to the mean outer radius
  double wound_stress_MPa = 0.0;  // at the barrel: tension x fill / fiber section
  double one_layer_MPa = 0.0;     // tension / (radius x pitch): the first layer alone
  Profile stiff, soft;
  bool tension_assumed_constant = false;  // since the plan has no [takeup]
};

enum class MachineWarningKind {
  speed_ceiling,
  clutch_range,
  tension_too_high,
  tension_too_low,
  reversal_friction,
  fleet_angle,
  traverse_reversal,
  run_down,
  length_overrun,
  rim_reached,
  rim_clearance,
  spool_strength,
};

// Stable names, as in the JSON document: "speed_ceiling".
[[nodiscard]] const char* name_of(MachineWarningKind kind);

struct MachineWarning {
  struct Figure {
    std::string name;  // with its unit: "needed_rpm"
    double value = 0.0;
  };
  MachineWarningKind kind = MachineWarningKind::speed_ceiling;
  bool note = false;  // worth knowing; nothing is out of range
  std::string text;
  std::vector<Figure> figures;
};

// A key of the plan that is not given, and what it would tell.
struct MissingKey {
  std::string key, gives;
};

struct TakeupRun {
  MachineCurves curves;
  std::vector<Checkpoint> checkpoints;
  std::vector<StepPlace> steps;
  std::optional<double> time_s;
  std::optional<double> least_speed_ceiling_rpm;  // what the spool turns at most, at line speed
  CounterSetting counter;
  std::optional<FleetAngle> fleet;
  HoldLimits hold;
  std::optional<GuideReversal> reversal;
  std::optional<double> bend_strain, bend_stress_MPa;  // on the barrel
  std::optional<PressureEstimate> pressure;
  std::optional<PayoffRun> payoff;       // how the fiber comes off again, drawn from the side
  std::vector<MachineWarning> warnings;  // out of range first, then notes
  std::vector<MissingKey> missing;
};

// Precondition: build and measurements belong to the plan, complete. Cancelled through `progress`: returns what is
// ready so far.
[[nodiscard]] TakeupRun take_up(const Plan& plan, const Build& build, const Measurements& measurements,
                                Progress& progress);

// Of the same run only `curves`, `hold` and `least_speed_ceiling_rpm`: what the pull and the speed are weighed by. Takes a small
// part of the time, and needs no progress.
[[nodiscard]] TakeupRun pull_and_speed(const Plan& plan, const Build& build, const Measurements& measurements);

}  // namespace laywright
