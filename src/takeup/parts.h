// The parts of take_up(), one file each. All figures as in takeup_run.h.
#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "takeup/takeup_run.h"
#include "takeup/turn_line.h"

namespace laywright {

// What every part reads. The wind has some length.
struct MachineWind {
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  const TurnLine& line;

  // Spool turns of a layer (0 = the first); a last layer that is not complete counts as the one before it, the only one as
  // the guide's way from stop to stop.
  [[nodiscard]] double turns_of_layer(std::size_t layer) const;
};

// 0 of none.
[[nodiscard]] inline double greatest(const std::vector<double>& values) {
  return values.empty() ? 0.0 : *std::max_element(values.begin(), values.end());
}

[[nodiscard]] MachineCurves make_curves(const MachineWind& wind);
// A. Of curves that have a torque; empty where it is not known all the way.
[[nodiscard]] std::vector<double> clutch_currents(const Plan& plan, const MachineCurves& curves);
// The dial of a clutch that was measured in A; null where there is none.
[[nodiscard]] const Dial* measured_clutch(const Plan& plan);
// What its gauge would show on the diameter on which it was measured, N. Precondition: the curves have a torque.
[[nodiscard]] std::vector<double> pulls_on_clutch(const Plan& plan, const Dial& clutch, const MachineCurves& curves);
[[nodiscard]] std::vector<Checkpoint> make_checkpoints(const MachineWind& wind);
[[nodiscard]] std::vector<StepPlace> place_steps(const MachineWind& wind);
[[nodiscard]] CounterSetting set_counter(const MachineWind& wind);
[[nodiscard]] std::optional<FleetAngle> find_fleet_angle(const MachineWind& wind, Progress& progress);
[[nodiscard]] HoldLimits find_hold(const MachineWind& wind, const MachineCurves& curves);
[[nodiscard]] std::optional<GuideReversal> find_reversal(const MachineWind& wind, const MachineCurves& curves);
[[nodiscard]] std::optional<PressureEstimate> estimate_pressure(const MachineWind& wind);
[[nodiscard]] std::vector<MissingKey> find_missing(const Plan& plan);
[[nodiscard]] std::vector<MachineWarning> find_warnings(const MachineWind& wind, const TakeupRun& run);

// The tension at a radius of the centre line, N; none without wind.tension and [takeup].
[[nodiscard]] std::optional<double> planned_tension(const MachineWind& wind, double radius_mm);

}  // namespace laywright
