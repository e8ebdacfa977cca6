// How much fiber fits onto the spool up to the plan's rim clearance: by the model, and by the formulas of handbooks,
// each with what it leaves out.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "jobs/parallel.h"
#include "lay/lay.h"
#include "plan/lay_plan.h"

namespace laywright {

// The space that the formulas fill: a ring between barrel and the surface at rim clearance.
struct WindingSpace {
  double barrel_mm = 0.0;  // diameter; of a tapered barrel the mean
  double depth_mm = 0.0;   // from the barrel to the surface
  double width_mm = 0.0;   // of opening flanges the mean over the depth
};
[[nodiscard]] WindingSpace winding_space(const PlanDraft& draft);

// Lengths in mm; `d_mm` is the diameter of the fiber. Precondition: all above nothing.

// pi (A + D) A B / d^2, A depth, D barrel, B width: every turn in a square of its own. In feet and inches it is the
// rule of rope reels and cable reels, (A + D) A B .2618 / d^2.
[[nodiscard]] double square_length(const WindingSpace& space, double d_mm);
// The same for layers that rise by so much: pi (A + D) A B / (d rise).
[[nodiscard]] double length_at_rise(const WindingSpace& space, double d_mm, double rise_mm);
// The densest packing there is: fill pi / sqrt(12).
[[nodiscard]] double hexagonal_length(const WindingSpace& space, double d_mm);
// Whole layers of whole turns at that pitch, nested: the first on the barrel, each next one sqrt(d^2 - p^2 / 4) higher,
// every layer with 1 + floor((B - d) / p) turns.
[[nodiscard]] double nested_length(const WindingSpace& space, double d_mm, double pitch_mm);

// Rope reel tables count a rope as this much thicker than its nominal diameter (of half an inch).
inline constexpr double rope_oversize = 1.064;
// Rise of a layer in a practice of cable packing, in d.
inline constexpr double cable_rise_d = 0.95;

struct CapacityRow {
  std::string name;
  double length_mm = 0.0;
  std::string leaves_out;
  std::string source;
};

struct Capacity {
  WindingSpace space;
  double rim_clearance_mm = 0.0;
  // By the model: until the first fiber anywhere stands that high, and until a turn does on average.
  double first_touch_mm = 0.0, on_average_mm = 0.0;
  double first_touch_turns = 0.0, on_average_turns = 0.0;
  int layers = 0;
  double fill_factor = 0.0;  // of the build that ends with the average
  bool stopped_by_rim = false;
  std::vector<CapacityRow> formulas;
};

// Errors: the spool is too large for a build, cancelled (text `stopped_text`).
[[nodiscard]] Result<Capacity> capacity(const Plan& plan, const LaySettings& settings, Progress& progress);

}  // namespace laywright
