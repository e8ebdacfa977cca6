#include <algorithm>
#include <cmath>
#include <numbers>

#include "payoff/hold.h"
#include "payoff/parts.h"

namespace laywright {
namespace {

constexpr double usual_eye_widths = 20.0;

// Drawn through beneath a turn and back over it.
constexpr double around_a_turn_rad = std::numbers::pi;

}  // namespace

double eye_distance_mm(const Plan& plan, const PayoffSettings& settings) {
  return settings.eye_mm.value_or(usual_eye_widths * plan.spool().inside_width_mm);
}

Forces::Forces(const Plan& plan, const Build& build, const Unwinding& found, const PayoffSettings& settings)
    : build_(build),
      found_(found),
      friction_(payoff_friction(plan.fiber().friction)),
      d_(build.fiber_diameter_mm),
      // Over an end the drawn fiber stands square to the wound one.
      steepness_(settings.way == DrawOff::side ? 1.0 - std::cos(carried_round_rad) : 1.0),
      over_end_(settings.way != DrawOff::side),
      eye_x_mm_(0.5 * plan.spool().inside_width_mm),
      eye_mm_(eye_distance_mm(plan, settings)) {}

Held Forces::at(std::size_t node) {
  Held held;
  double bend = 0.0;
  if (over_end_) {
    bend = found_.bends_rad[node];
    if (bend > 0.0) held.by = HeldBy::drawn_over;
  } else {
    bend = std::atan(std::abs(build_.nodes.x(node) - eye_x_mm_) / eye_mm_);
    held.by = HeldBy::led_aside;
  }
  while (covered_ < found_.covered.size() && found_.covered[covered_].end_node <= node) ++covered_;
  if (covered_ < found_.covered.size() && found_.covered[covered_].first_node <= node) {
    // What has been drawn through within the last turn still holds: so many that lie over it count together.
    const std::size_t turn_end = node + static_cast<std::size_t>(build_.stations_per_turn);
    std::size_t last = covered_;
    while (last < found_.covered.size() && found_.covered[last].first_node < turn_end) ++last;
    bend += around_a_turn_rad * static_cast<double>(last - covered_);
    held.by = HeldBy::under_turns;
  }
  held.multiple = bend_multiple(bend, friction_);
  while (slit_ < found_.slits.size() && found_.slits[slit_].node < node) ++slit_;
  if (slit_ < found_.slits.size() && found_.slits[slit_].node == node) {
    const InSlit& slit = found_.slits[slit_];
    const double out =
        slit_multiple({slit.lean_rad, slit.turns_above, build_.nodes.r(node)}, d_, friction_, steepness_);
    if (out > held.multiple) held.by = HeldBy::in_slit;
    held.multiple *= std::max(1.0, out);
  }
  return held;
}

}  // namespace laywright
