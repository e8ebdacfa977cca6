// The patterns of a plan: a row for each stretch of layers with settings of its own.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "pattern/safe_settings.h"

namespace laywright {

struct PatternRow {
  int from_layer = 1, to_layer = 1;  // to_layer by the estimate of the diameter
  bool reached = true;               // false: by that estimate the wind ends before; then to_layer means nothing
  std::optional<std::size_t> step;   // index of the [[wind.step]] that begins it; none: the traverse's own settings
  Traverse traverse;                 // with the settings that hold here
  GuideCycle cycle;
  double inside_mm = 0.0, outside_mm = 0.0;  // diameter of the centre line at the row's beginning and end
  double inside_angle_rad = 0.0, outside_angle_rad = 0.0;
  Pattern pattern;  // at inside_mm, where fibers that stand so far apart along the axis are nearest to each other
  double outside_ahead_d = 0.0;  // the same displacement at outside_mm
  // One sigma by which the plan's scatter and play move the strand beside the one that it lies nearest to, in d.
  double scatter_d = 0.0;
  std::vector<SafeSetting> safe;  // of rows that are ribbons or open; each makes a sound plan
};

// The key of a safe setting in the plan: "traverse.pitch", "wind.step[0].right_stop".
[[nodiscard]] std::string key_of(const PatternRow& row, SafeSetting::What what);

struct PatternTable {
  bool stepped = false;  // a stepped guide stands at the same places in every double stroke: no rows
  double gap_d = usual_gap_d;
  std::vector<PatternRow> rows;
};

// Diameters are an estimate, from the volume of the fiber at a fill that crossed winds without ribbons have: ribbons stand over it
// (tests/pattern: at a whole ratio nearly twice the build-up in the middle, three times at the highest). A wind that is to end at a
// diameter ends there. Nothing else depends on them but the angle, and with it a little the displacement across the
// fiber. Of a tapered barrel its thinner end counts. Precondition: least_gap_d <= gap_d <= most_gap_d.
[[nodiscard]] PatternTable patterns(const Plan& plan, double gap_d);

}  // namespace laywright
