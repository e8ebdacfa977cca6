// The parts of take_up(), one file each. All figures as in takeup_run.h.
#pragma once

#include "takeup/takeup_run.h"
#include "takeup/turn_line.h"

namespace laywright {

// What every part reads. The wind has some length.
struct Wound {
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  const TurnLine& line;

  // Spool turns of a layer (0 = the first); a last layer that is not complete counts as the one before it.
  [[nodiscard]] double turns_of_layer(std::size_t layer) const;
};

[[nodiscard]] MachineCurves make_curves(const Wound& wound);
[[nodiscard]] std::vector<Checkpoint> make_checkpoints(const Wound& wound);
[[nodiscard]] std::vector<StepPlace> place_steps(const Wound& wound);
[[nodiscard]] CounterSetting set_counter(const Wound& wound);
[[nodiscard]] std::optional<FleetAngle> find_fleet_angle(const Wound& wound, Progress& progress);
[[nodiscard]] HoldLimits find_hold(const Wound& wound, const MachineCurves& curves);
[[nodiscard]] std::optional<GuideReversal> find_reversal(const Wound& wound, const MachineCurves& curves);
[[nodiscard]] std::optional<PressureEstimate> estimate_pressure(const Wound& wound);
[[nodiscard]] std::vector<MissingKey> find_missing(const Plan& plan);
[[nodiscard]] std::vector<MachineWarning> find_warnings(const Wound& wound, const TakeupRun& run);

// The tension at a radius of the centre line, N; none without wind.tension and [takeup].
[[nodiscard]] std::optional<double> planned_tension(const Wound& wound, double radius_mm);

}  // namespace laywright
