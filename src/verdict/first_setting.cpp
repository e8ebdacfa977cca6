#include "verdict/first_setting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "measure/acceptance.h"
#include "measure/phrases.h"
#include "plan/layer_setting.h"
#include "verdict/own_unit.h"
#include "verdict/ribbon_advice.h"
#include "verdict/usual_settings.h"
#include "verdict/weigh.h"

namespace laywright {
namespace {

constexpr std::size_t digits = 3;

struct Case {
  const Plan& plan;
  const Build& build;
  const Measurements& measurements;
  const Check& check;
  const std::vector<Check>& checks;
  Traverse at_end;  // as it is set in the last layer

  // Whether the same is wrong at both flanges.
  [[nodiscard]] bool at_both() const {
    return std::count_if(checks.begin(), checks.end(), [&](const Check& other) {
             return check.side && other.what == check.what && other.grade == check.grade;
           }) == 2;
  }
  [[nodiscard]] double d() const { return plan.fiber().diameter_mm; }
  [[nodiscard]] const Traverse& traverse() const { return plan.traverse(); }
  [[nodiscard]] double pitch_d() const { return at_end.pitch_mm / d(); }
  [[nodiscard]] double stop_mm(Side side) const {
    return side == Side::left ? at_end.left_stop_mm : at_end.right_stop_mm;
  }
  [[nodiscard]] bool crossed() const { return product_of(plan) == Product::crossed; }
};

using Advice = std::optional<std::string>;

// Pitches that differ by less are one: no dial tells them apart.
constexpr double same_pitch = 0.005;

std::string pitch_of(const Case& c, double pitch_mm) {
  return in_own_unit(c.plan, "traverse.pitch", pitch_mm, digits);
}

std::string set_pitch(const Case& c) {
  const double now = c.at_end.pitch_mm, wanted = usual_pitch_mm(c.plan.draft());
  return fmt::format("set a {} pitch, about {} (now {})", now < wanted ? "wider" : "finer", pitch_of(c, wanted),
                     pitch_of(c, now));
}

Advice pitch_off(const Case& c) {
  const bool off = c.pitch_d() < (1.0 - 1e-9) * finest_pitch_d || c.pitch_d() > coarsest_pitch_d;
  if (c.crossed() || !off) return {};
  return set_pitch(c);
}

// What the machine does at its stops.
Advice long_reversal(const Case& c) {
  const Reversal& reversal = c.traverse().reversal;
  if (reversal.kind == ReversalKind::dwell && reversal.turns > 0.0) {
    return fmt::format("let the guide dwell for less than {} turns at its stops, or not at all",
                       setting(reversal.turns));
  }
  if (reversal.kind == ReversalKind::ramp && reversal.turns > short_ramp_turns) {
    return fmt::format("let the guide turn back quicker than within {} turns", setting(reversal.turns));
  }
  return {};
}

Advice worn_traverse(const Case& c) {
  const Reversal& reversal = c.traverse().reversal;
  if (reversal.lost_motion_mm > 0.5 * c.d()) {
    return fmt::format("take the play out of the traverse's drive ({} of lost motion)",
                       in_own_unit(c.plan, "traverse.reversal.lost_motion", reversal.lost_motion_mm));
  }
  if (reversal.stop_scatter_mm > 0.25 * c.d()) {
    return fmt::format("see that the guide's stops repeat (now within {})",
                       in_own_unit(c.plan, "traverse.reversal.stop_scatter", reversal.stop_scatter_mm));
  }
  if (c.traverse().guide_play_mm > 0.5 * c.d()) {
    return fmt::format("use a guide with less play than {}",
                       in_own_unit(c.plan, "traverse.guide_play", c.traverse().guide_play_mm));
  }
  return {};
}

Advice long_free_length(const Case& c) {
  if (c.traverse().free_length_mm <= long_free_length_d * c.d()) return {};
  return fmt::format("bring the guide nearer to the spool (free length now {})",
                     in_own_unit(c.plan, "traverse.free_length", c.traverse().free_length_mm));
}

std::string stop_of(const Case& c, Side side) {
  return in_own_unit(c.plan, side == Side::left ? "traverse.left_stop" : "traverse.right_stop", c.stop_mm(side));
}

// "left stop ... (now 1.2 mm)", or both.
std::string set_stops(const Case& c, Side side, const char* which_way, const char* ways, const char* when = "") {
  if (c.at_both() && c.stop_mm(Side::left) == c.stop_mm(Side::right))
    return fmt::format("set both stops {} (now {}{})", ways, stop_of(c, Side::left), when);
  if (c.at_both()) {
    return fmt::format("set both stops {} (now {} left and {} right{})", ways, stop_of(c, Side::left),
                       stop_of(c, Side::right), when);
  }
  return fmt::format("set the {} stop {} (now {}{})", name_of(side), which_way, stop_of(c, side), when);
}

std::string nearer(const Case& c, Side side) {
  // Such flanges leave more room with each layer.
  if (c.plan.spool().flange_taper_rad > 0.0) {
    return set_stops(c, side, "further out with the layers, as the flange opens",
                     "further out with the layers, as the flanges open", " at the end");
  }
  return set_stops(c, side, "nearer to the flange", "nearer to the flanges");
}

std::string inward(const Case& c, Side side) {
  return set_stops(c, side, "further from the flange", "further from the flanges");
}

template <class... Rules>
Advice first_of(const Case& c, Rules... rules) {
  Advice advice;
  ((advice = advice ? advice : rules(c)), ...);
  return advice;
}

std::string against_ridge(const Case& c, Side side) {
  const Advice advice = first_of(c, pitch_off, long_reversal, worn_traverse);
  if (advice) return *advice;
  if (c.stop_mm(side) < 0.0) return inward(c, side);
  return long_free_length(c).value_or(inward(c, side));
}

std::string against_valley(const Case& c, Side side) { return pitch_off(c).value_or(nearer(c, side)); }

std::string against_unevenness(const Case& c) {
  const auto [left, right] = edges_over_middle_mm(c.plan, c.measurements);
  const Side side = std::abs(left) >= std::abs(right) ? Side::left : Side::right;
  return (side == Side::left ? left : right) > 0.0 ? against_ridge(c, side) : against_valley(c, side);
}

std::string against_flange_gap(const Case& c) {
  const Finding* worst = nullptr;
  for (const Finding& finding : c.measurements.findings) {
    const bool larger = finding.kind == FindingKind::flange_gap && (!worst || finding.size_d > worst->size_d);
    if (larger) worst = &finding;
  }
  const Side side = worst != nullptr && worst->side ? *worst->side : Side::left;
  return first_of(c, pitch_off, worn_traverse).value_or(nearer(c, side));
}

// The pitch at which turns usually lie side by side, where the plan's is another.
Advice usual_pitch(const Case& c) {
  const bool is_usual = std::abs(c.at_end.pitch_mm / usual_pitch_mm(c.plan.draft()) - 1.0) < same_pitch;
  if (is_usual) return {};
  return set_pitch(c);
}

// Turns that are out of their layer, and gaps within layers.
std::string against_disorder(const Case& c) {
  return first_of(c, pitch_off, long_reversal, worn_traverse, long_free_length, usual_pitch)
      .value_or("let better settings be looked for (laywright improve): none stands out as wrong");
}

// The ring of the outer diameter that has to stay free, as fiber at this wind's fill, mm of length.
double surplus_mm(const Case& c) {
  constexpr double spare_d = 2.0;
  const double wanted = c.plan.limits().rim_clearance_mm + spare_d * c.d();
  const double depth = std::max(0.0, wanted - c.measurements.rim_clearance_mm);
  const double radius = 0.5 * c.plan.spool().flange_diameter_mm - wanted;
  const double ring = 2.0 * std::numbers::pi * radius * depth * c.plan.spool().inside_width_mm;
  return ring * c.measurements.fill_factor / (0.25 * std::numbers::pi * c.d() * c.d());
}

std::string less_fiber(const Case& c) {
  // How far a ring can be trusted: it is level, the surface is not.
  constexpr double trusted = 0.5;
  const double keep = 1.0 - surplus_mm(c) / std::max(c.build.length_mm, 1e-9);
  const Wind& wind = c.plan.wind();
  const char* spool = ", or take a spool with higher flanges";
  if (keep < trusted) return fmt::format("wind much less{}", spool);
  if (wind.length_mm) {
    return fmt::format("wind less, about {} (now {}){}",
                       in_own_unit(c.plan, "wind.length", keep * c.build.length_mm, digits),
                       in_own_unit(c.plan, "wind.length", *wind.length_mm), spool);
  }
  if (wind.turns) {
    return fmt::format("wind less, about {} turns (now {}){}", count_of(static_cast<int>(keep * c.build.turns)),
                       count_of(static_cast<int>(std::lround(*wind.turns))), spool);
  }
  return fmt::format("wind to a smaller diameter than {}{}", in_own_unit(c.plan, "wind.diameter", *wind.diameter_mm),
                     spool);
}

std::string tension_now(const Case& c) {
  const std::optional<double> tension = c.plan.wind().tension_N;
  return tension ? fmt::format(" (now {})", in_own_unit(c.plan, "wind.tension", *tension)) : "";
}

std::string slower_line(const Case& c) {
  const std::optional<double> speed = c.plan.wind().line_speed_mm_per_s;
  if (!speed) return "run the line slower";
  return fmt::format("run the line slower, at {} at most (now {})",
                     in_own_unit(c.plan, "wind.line_speed", *speed * c.check.limit / c.check.value, digits),
                     in_own_unit(c.plan, "wind.line_speed", *speed));
}

}  // namespace

std::string first_setting(const Plan& plan, const Build& build, const Measurements& measurements,
                          const std::vector<Check>& checks, std::size_t deciding) {
  const Check& check = checks[deciding];
  const int layers = static_cast<int>(measurements.layers.size());
  const Case c{plan, build, measurements, check, checks, traverse_in_layer(plan, layers)};
  switch (check.what) {
    case Weighed::planned_end:
    case Weighed::rim_clearance: return less_fiber(c);
    case Weighed::greatest_pull: return "lower the tension" + tension_now(c);
    case Weighed::least_pull: return "raise the tension" + tension_now(c);
    case Weighed::bend: return "take a spool with a larger barrel";
    case Weighed::spool_speed: return slower_line(c);
    case Weighed::clutch_current: return "lower the tension, or use a larger clutch" + tension_now(c);
    case Weighed::ribbon: return against_ribbon(plan, measurements);
    case Weighed::ridge: return against_ridge(c, check.side.value_or(Side::left));
    case Weighed::valley: return against_valley(c, check.side.value_or(Side::left));
    case Weighed::unevenness: return against_unevenness(c);
    case Weighed::flange_gap: return against_flange_gap(c);
    case Weighed::open_gaps:
    case Weighed::dropped_turns:
    case Weighed::drop_depth:
    case Weighed::ride_ups:
    case Weighed::payoff_force: return against_disorder(c);
  }
  return "";
}

}  // namespace laywright
