// What the machine does at each length of a wind, quantity by quantity: for curves over the length, and for the figures
// of one place.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/playback.h"
#include "figures/both_units.h"
#include "plan/lay_plan.h"
#include "scene/view.h"
#include "takeup/takeup_run.h"

namespace laywright {

struct MachineQuantity {
  const char* id;                // stable: "spool_speed"
  const char* name;              // "Spool speed"
  std::optional<Amount> amount;  // tells the units of both systems; none: `unit` in both
  const char* unit;
  std::vector<double> MachineCurves::*curve;
  double factor;                   // from the curve's values to the amount's metric unit, or to `unit`
  int digits;                      // that count, of the greatest value
  bool of_clutch;                  // means something only where the plan has a [takeup]
  std::vector<const char*> needs;  // keys of the plan without which there is no curve
};

// In the order in which a person reads them: diameter, tension, speeds, clutch.
[[nodiscard]] const std::vector<MachineQuantity>& machine_quantities();

[[nodiscard]] const char* unit_of(const MachineQuantity& quantity, Units units);
// A value of the curve, in the unit above.
[[nodiscard]] double value_in(const MachineQuantity& quantity, double value, Units units);
// With its unit: "0.4873 N"; as many decimals as the greatest value of the run needs for its digits, so that figures keep
// their width while the wind grows. Precondition: the run has the curve.
[[nodiscard]] std::string text_of(const MachineQuantity& quantity, double value, const TakeupRun& run, Units units);

// The first of the needed keys that the plan does not give; empty: none is missing.
[[nodiscard]] std::string missing_key(const MachineQuantity& quantity, const Plan& plan);

// The value of its curve at a length within a layer: between the samples before and after; at the change of layers that
// of the sample in the same layer. None where the run has no such curve.
[[nodiscard]] std::optional<double> value_at(const MachineQuantity& quantity, const TakeupRun& run, double length_mm,
                                             int layer);

// A line of what is to be read at a place of the wind.
struct MachineRow {
  std::string id, name;
  std::string text;     // "0.4873 N"; empty where the plan does not say
  std::string missing;  // then the key of the plan to fill in
};

[[nodiscard]] std::vector<MachineRow> machine_rows(const Wound& wound, const TakeupRun& run, const Moment& moment,
                                                   Units units);

}  // namespace laywright
