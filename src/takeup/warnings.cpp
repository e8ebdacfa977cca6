#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "takeup/parts.h"

namespace laywright {
namespace {

using Kind = MachineWarningKind;
using Found = std::optional<MachineWarning>;

std::string shown(double value) { return figure_with(value, 3); }

// "2,998.0 m".
std::string metres(double mm) { return amount_text(Amount::fiber_length, mm / 1e3, 1, false); }

double least(const std::vector<double>& values) { return *std::min_element(values.begin(), values.end()); }

Found speed_ceiling(const MachineWind& wind, const TakeupRun& run) {
  const auto& takeup = wind.plan.takeup();
  if (!takeup || !takeup->speed_ceiling_rpm || !run.least_speed_ceiling_rpm) return {};
  const double needed = *run.least_speed_ceiling_rpm, ceiling = *takeup->speed_ceiling_rpm;
  if (ceiling >= needed) return {};
  const double line_m_per_min = *wind.plan.wind().line_speed_mm_per_s * 0.06 * ceiling / needed;
  return MachineWarning{
      Kind::speed_ceiling,
      false,
      fmt::format(
          "The take-up may turn at {} rpm at most, but at line speed the empty barrel needs {} rpm: the fiber "
          "would go slack. Raise the speed ceiling, or run the line at {} m/min at most.",
          shown(ceiling), shown(needed), shown(line_m_per_min)),
      {{"ceiling_rpm", ceiling}, {"needed_rpm", needed}, {"line_speed_at_ceiling_m_per_min", line_m_per_min}}};
}

// Of a clutch that was measured nothing is known beyond.
Found beyond_measured(const MachineWind& wind, const TakeupRun& run) {
  const Dial* clutch = measured_clutch(wind.plan);
  if (clutch == nullptr || run.curves.torque_Nmm.empty()) return {};
  const std::vector<double> pulls = pulls_on_clutch(wind.plan, *clutch, run.curves);
  const auto at = static_cast<std::size_t>(
      std::find_if(pulls.begin(), pulls.end(), [&](double pull) { return !reading_at_value(*clutch, pull); }) -
      pulls.begin());
  const DialRange range = range_of(*clutch);
  if (at == pulls.size() || !range.low || !range.high) return {};
  return MachineWarning{
      Kind::clutch_range,
      false,
      fmt::format(
          "The clutch was measured from {} N to {} N on {} mm, but at {} of fiber it has to give {} N there: what "
          "current that takes is not known. Measure further, or change wind.tension.",
          shown(*range.low), shown(*range.high), shown(*clutch->diameter_mm), metres(run.curves.length_mm[at]),
          shown(pulls[at])),
      {{"least_measured_N", *range.low},
       {"greatest_measured_N", *range.high},
       {"needed_N", pulls[at]},
       {"at_m", run.curves.length_mm[at] / 1e3}}};
}

Found clutch_range(const MachineWind& wind, const TakeupRun& run) {
  if (run.curves.current_A.empty()) return beyond_measured(wind, run);
  if (measured_clutch(wind.plan) != nullptr) return {};
  const double full = *wind.plan.takeup()->full_current_A, needed = greatest(run.curves.current_A);
  if (needed <= full) return {};
  const auto at = static_cast<std::size_t>(
      std::max_element(run.curves.current_A.begin(), run.curves.current_A.end()) - run.curves.current_A.begin());
  const double tension = run.curves.tension_N[at] * full / needed;
  return MachineWarning{
      Kind::clutch_range,
      false,
      fmt::format("The clutch would need {} A, but its full current is {} A: the pull stays at {} N there, at {} of "
                  "fiber. Lower wind.tension, or use a larger clutch or a smaller reduction.",
                  shown(needed), shown(full), shown(tension), metres(run.curves.length_mm[at])),
      {{"needed_A", needed}, {"full_A", full}, {"tension_N", tension}, {"at_m", run.curves.length_mm[at] / 1e3}}};
}

Found tension_too_high(const MachineWind& wind, const TakeupRun& run) {
  const std::optional<double> most = wind.plan.fiber().max_tension_N;
  if (!most || run.curves.tension_N.empty()) return {};
  const auto at = static_cast<std::size_t>(
      std::max_element(run.curves.tension_N.begin(), run.curves.tension_N.end()) - run.curves.tension_N.begin());
  const double tension = run.curves.tension_N[at];
  // Rounding of the radius is no overload.
  if (tension <= *most * (1.0 + 1e-9)) return {};
  return MachineWarning{
      Kind::tension_too_high,
      false,
      fmt::format("The pull grows to {} N at {} of fiber (radius {} mm), more than the fiber's greatest tension of "
                  "{} N. Lower wind.tension.",
                  shown(tension), metres(run.curves.length_mm[at]), shown(run.curves.radius_mm[at]), shown(*most)),
      {{"tension_N", tension},
       {"max_tension_N", *most},
       {"at_m", run.curves.length_mm[at] / 1e3},
       {"radius", run.curves.radius_mm[at]}}};
}

Found tension_too_low(const MachineWind& wind, const TakeupRun& run) {
  if (!run.hold.least_tension_N) return {};
  const double needed = *run.hold.least_tension_N;
  const std::optional<double> planned =
      run.curves.tension_N.empty() ? wind.plan.wind().tension_N : std::optional(least(run.curves.tension_N));
  if (!planned || *planned >= needed) return {};
  return MachineWarning{
      Kind::tension_too_low,
      false,
      fmt::format("The pull falls to {} N. Below {} N the fiber does not lie down on the spool: that much is needed "
                  "against its weight, its motion and its stiffness. Raise wind.tension.",
                  shown(*planned), shown(needed)),
      {{"tension_N", *planned}, {"needed_N", needed}}};
}

Found reversal_friction(const MachineWind& wind, const TakeupRun& run) {
  const double friction = wind.plan.fiber().friction;
  if (!run.hold.friction_at_reversal || *run.hold.friction_at_reversal <= friction) return {};
  return MachineWarning{
      Kind::reversal_friction,
      false,
      fmt::format(
          "Where the guide turns back, a bare barrel must hold the fiber with a friction of {}, but the plan "
          "has {}: the fiber slides towards the middle there. More pull does not help, since grip and slide "
          "grow alike; a finer pitch, a longer free length or a ramp does.",
          shown(*run.hold.friction_at_reversal), shown(friction)),
      {{"needed_friction", *run.hold.friction_at_reversal}, {"friction", friction}}};
}

// Smooth drums: at most 1.5 degrees (wirerope.net, fleet angle page). The lower end of that range, .25 to .5 degrees,
// is for a rope that leads itself across the drum from a fixed sheave; a guide that travels along leads the fiber, so
// it does not apply here.
Found fleet_angle(const MachineWind&, const TakeupRun& run) {
  constexpr double most_deg = 1.5;
  if (!run.fleet || run.fleet->greatest_deg <= most_deg) return {};
  return MachineWarning{
      Kind::fleet_angle,
      false,
      fmt::format(
          "The fiber comes onto the spool at up to {} degrees from square (at turn {}); practice with wire "
          "rope on smooth drums is {} degrees at most. Friction must hold it: watch for fiber that slides or "
          "lifts, and for wear at the guide.",
          shown(run.fleet->greatest_deg), figure(run.fleet->at_turn, 0), shown(most_deg)),
      {{"greatest_deg", run.fleet->greatest_deg}, {"at_turn", run.fleet->at_turn}, {"practice_deg", most_deg}}};
}

Found traverse_reversal(const MachineWind& wind, const TakeupRun& run) {
  if (!run.reversal) return {};
  const GuideReversal& reversal = *run.reversal;
  const std::string speed = shown(reversal.speed_mm_per_s);
  std::vector<MachineWarning::Figure> figures{{"guide_speed_mm_per_s", reversal.speed_mm_per_s}};
  if (reversal.acceleration_mm_per_s2) {
    figures.push_back({"time_s", *reversal.time_s});
    figures.push_back({"acceleration_mm_per_s2", *reversal.acceleration_mm_per_s2});
    return MachineWarning{
        Kind::traverse_reversal, true,
        fmt::format("The guide turns back from {} mm/s within {} s, at {} mm/s2. See that the traverse can.", speed,
                    shown(*reversal.time_s), shown(*reversal.acceleration_mm_per_s2)),
        figures};
  }
  if (wind.plan.traverse().motion == Motion::stepped || reversal.time_s) return {};
  std::string text =
      fmt::format("The plan turns the guide back at once, from {} mm/s one way to {} mm/s the other.", speed, speed);
  if (reversal.hidden_time_s) {
    figures.push_back({"hidden_time_s", *reversal.hidden_time_s});
    text += fmt::format(
        " A traverse that takes up to {} s hides it in the fiber's lag; one that takes longer leaves "
        "its mark at the flanges: put its ramp or dwell into the plan.",
        shown(*reversal.hidden_time_s));
  }
  return MachineWarning{Kind::traverse_reversal, true, text, figures};
}

// Against the plan's ramps, or the one for which the curves are stated.
Found run_down(const MachineWind& wind, const TakeupRun& run) {
  const double start = run.hold.shortest_start_s.value_or(0.0), stop = run.hold.shortest_stop_s.value_or(0.0);
  const auto& takeup = wind.plan.takeup();
  const double starts_in = takeup ? takeup->start_ramp_s.value_or(stated_ramp_s) : stated_ramp_s;
  const double stops_in = takeup ? takeup->stop_ramp_s.value_or(stated_ramp_s) : stated_ramp_s;
  if (start <= starts_in && stop <= stops_in) return {};
  const bool starting = start - starts_in >= stop - stops_in;
  return MachineWarning{
      Kind::run_down,
      false,
      starting ? fmt::format(
                     "The pull alone needs {} s to bring the full spool to line speed; a quicker start leaves the "
                     "fiber slack.",
                     shown(start))
               : fmt::format(
                     "The full spool must run down in {} s or more; a quicker stop pulls more than the fiber bears.",
                     shown(stop)),
      {{starting ? "shortest_start_s" : "shortest_stop_s", starting ? start : stop}}};
}

// As the counter itself shows it, where it is known.
std::string set_to_words(const CounterSetting& counter) {
  return counter.reading ? fmt::format("{:.10g} {}", counter.reading->reading, counter.reading->unit)
                         : metres(*counter.set_to_mm);
}
double end_of(const CounterSetting& counter) { return counter.reading ? counter.reading->end_mm : counter.end_mm; }

Found length_overrun(const MachineWind& wind, const TakeupRun& run) {
  const CounterSetting& counter = run.counter;
  if (!wind.plan.takeup() || counter.mode != LengthStop::signal || !counter.lead_mm) return {};
  if (*counter.lead_mm == 0.0) {
    return MachineWarning{
        Kind::length_overrun,
        true,
        "The counter only signals, and the plan gives no takeup.reaction_time: the line overruns by "
        "its speed times the time until somebody stops it.",
        {}};
  }
  return MachineWarning{Kind::length_overrun,
                        false,
                        fmt::format("The counter only signals: {} the line runs on for {}. Set the signal to {}, so "
                                    "that the wind ends at {}.",
                                    wind.plan.takeup()->stop_ramp_s ? "until it stands" : "within the reaction time",
                                    metres(*counter.lead_mm), set_to_words(counter), metres(end_of(counter))),
                        {{"overrun_m", *counter.lead_mm / 1e3},
                         {"set_to_m", *counter.set_to_mm / 1e3},
                         {"end_m", counter.end_mm / 1e3}}};
}

Found rim_reached(const MachineWind& wind, const TakeupRun&) {
  if (wind.build.stopped_by != StopReason::rim) return {};
  MachineWarning warning{Kind::rim_reached, false, "", {{"reached_m", wind.build.length_mm / 1e3}}};
  std::string wanted = "the end of the plan";
  if (wind.plan.wind().length_mm) {
    wanted = "the planned " + metres(*wind.plan.wind().length_mm);
    warning.figures.push_back({"wanted_m", *wind.plan.wind().length_mm / 1e3});
  }
  warning.text = fmt::format("The rim is reached at {}, before {}: stop there, or use a larger spool.",
                             metres(wind.build.length_mm), wanted);
  return warning;
}

Found rim_clearance(const MachineWind& wind, const TakeupRun&) {
  const double wanted = wind.plan.limits().rim_clearance_mm, left = wind.measurements.rim_clearance_mm;
  if (wanted <= 0.0 || left >= wanted) return {};
  return MachineWarning{
      Kind::rim_clearance,
      false,
      fmt::format("At the end {} mm are left to the rim; the plan asks for {} mm.", figure(left, 2), shown(wanted)),
      {{"clearance", left}, {"wanted", wanted}}};
}

Found spool_strength(const MachineWind&, const TakeupRun& run) {
  if (!run.pressure) return {};
  const double barrel = run.pressure->stiff.barrel_MPa, soft = run.pressure->soft.barrel_MPa;
  const double force = run.pressure->stiff.flange_force_N;
  return MachineWarning{
      Kind::spool_strength,
      true,
      fmt::format("Whether the spool is strong enough cannot be known from a plan. Estimate, for a linear elastic "
                  "winding on a "
                  "rigid barrel, without creep: {} MPa on the barrel where the winding is soft, {} MPa where it is "
                  "stiff; each "
                  "flange is pushed outward with {} N at most. Compare with what the spool's maker allows.",
                  shown(soft), shown(barrel), shown(force)),
      {{"soft_barrel_MPa", soft}, {"stiff_barrel_MPa", barrel}, {"flange_force_N", force}}};
}

}  // namespace

const char* name_of(MachineWarningKind kind) {
  switch (kind) {
    case Kind::speed_ceiling: return "speed_ceiling";
    case Kind::clutch_range: return "clutch_range";
    case Kind::tension_too_high: return "tension_too_high";
    case Kind::tension_too_low: return "tension_too_low";
    case Kind::reversal_friction: return "reversal_friction";
    case Kind::fleet_angle: return "fleet_angle";
    case Kind::traverse_reversal: return "traverse_reversal";
    case Kind::run_down: return "run_down";
    case Kind::length_overrun: return "length_overrun";
    case Kind::rim_reached: return "rim_reached";
    case Kind::rim_clearance: return "rim_clearance";
    case Kind::spool_strength: return "spool_strength";
  }
  return "";
}

std::vector<MachineWarning> find_warnings(const MachineWind& wind, const TakeupRun& run) {
  std::vector<MachineWarning> warnings;
  for (const auto& find :
       {speed_ceiling, clutch_range, tension_too_high, tension_too_low, rim_reached, rim_clearance,
        reversal_friction, fleet_angle, run_down, length_overrun, traverse_reversal, spool_strength}) {
    if (Found found = find(wind, run)) warnings.push_back(std::move(*found));
  }
  std::stable_partition(warnings.begin(), warnings.end(), [](const MachineWarning& w) { return !w.note; });
  return warnings;
}

}  // namespace laywright
