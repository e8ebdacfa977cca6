#include "desk/machine_quantity.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "figures/figures.h"

namespace laywright {
namespace {

constexpr double N_m = 1e-3;  // of N mm

std::vector<MachineQuantity> make_quantities() {
  using C = MachineCurves;
  const char *speed = "wind.line_speed", *tension = "wind.tension", *control = "takeup.control";
  const char *torque = "takeup.torque_at_full_current", *current = "takeup.full_current";
  const char* ceiling = "takeup.speed_ceiling";
  return {
      {"diameter", "Winding diameter", Amount::small_length, "", &C::radius_mm, 2.0, 5, false, {}},
      {"tension", "Tension", Amount::force, "", &C::tension_N, 1.0, 4, false, {tension, control}},
      {"spool_speed", "Spool speed", {}, "rpm", &C::spool_rpm, 1.0, 4, false, {speed}},
      {"traverse_speed", "Traverse speed", Amount::guide_speed, "", &C::traverse_mm_per_s, 1.0, 4, false, {speed}},
      {"reversals", "Reversals", {}, "per min", &C::reversals_per_min, 1.0, 4, false, {speed}},
      {"torque", "Clutch torque", Amount::torque, "", &C::torque_Nmm, N_m, 4, true, {tension}},
      {"current", "Clutch current", {}, "A", &C::current_A, 1.0, 4, true, {tension, torque, current}},
      {"slip", "Clutch slip", {}, "rpm", &C::slip_rpm, 1.0, 4, true, {speed, ceiling}},
      {"heat", "Clutch heat", {}, "W", &C::clutch_heat_W, 1.0, 4, true, {speed, tension, ceiling}},
  };
}

bool is_given(const Plan& plan, std::string_view key) {
  const auto& takeup = plan.takeup();
  if (key == "wind.line_speed") return plan.wind().line_speed_mm_per_s.has_value();
  if (key == "wind.tension") return plan.wind().tension_N.has_value();
  if (key == "takeup.control") return takeup.has_value();
  if (key == "takeup.torque_at_full_current") return takeup && takeup->torque_at_full_current_Nmm;
  if (key == "takeup.full_current") return takeup && takeup->full_current_A;
  return takeup && takeup->speed_ceiling_rpm;
}

void add_times(std::vector<MachineRow>& rows, const Wound& wound, const Moment& moment) {
  const auto& speed = wound.plan().wind().line_speed_mm_per_s;
  const auto add = [&](const char* id, const char* name, double mm) {
    rows.push_back(speed ? MachineRow{id, name, duration_text(mm / *speed), ""}
                         : MachineRow{id, name, "", "wind.line_speed"});
  };
  add("since_start", "Since the start", moment.length_mm);
  add("to_finish", "To the finish", wound.build().length_mm - moment.length_mm);
}

}  // namespace

const std::vector<MachineQuantity>& machine_quantities() {
  static const std::vector<MachineQuantity> all = make_quantities();
  return all;
}

const char* unit_of(const MachineQuantity& quantity, Units units) {
  return quantity.amount ? unit_in(*quantity.amount, units == Units::inch) : quantity.unit;
}

double value_in(const MachineQuantity& quantity, double value, Units units) {
  const double metric = value * quantity.factor;
  return quantity.amount ? value_in(*quantity.amount, metric, units == Units::inch) : metric;
}

std::string text_of(const MachineQuantity& quantity, double value, const TakeupRun& run, Units units) {
  const std::vector<double>& curve = run.curves.*quantity.curve;
  const double greatest = quantity.factor * *std::max_element(curve.begin(), curve.end());
  const bool inch = units == Units::inch;
  const int decimals = decimals_for(greatest, quantity.digits);
  const std::string text = quantity.amount ? figure_in(*quantity.amount, quantity.factor * value, decimals, inch)
                                           : figure(quantity.factor * value, decimals);
  return fmt::format("{} {}", text, unit_of(quantity, units));
}

std::string missing_key(const MachineQuantity& quantity, const Plan& plan) {
  for (const char* key : quantity.needs) {
    if (!is_given(plan, key)) return key;
  }
  return "";
}

std::optional<double> value_at(const MachineQuantity& quantity, const TakeupRun& run, double length_mm, int layer) {
  const MachineCurves& curves = run.curves;
  const std::vector<double>& values = curves.*quantity.curve;
  if (values.empty()) return std::nullopt;
  const auto found = std::lower_bound(curves.length_mm.begin(), curves.length_mm.end(), length_mm);
  if (found == curves.length_mm.end()) return values.back();
  const auto after = static_cast<std::size_t>(found - curves.length_mm.begin());
  if (after == 0) return values.front();
  const std::size_t before = after - 1;
  if (curves.layer[before] != curves.layer[after]) {
    if (curves.layer[before] == layer) return values[before];
    if (curves.layer[after] == layer) return values[after];
  }
  const double share = (length_mm - curves.length_mm[before]) / (curves.length_mm[after] - curves.length_mm[before]);
  return std::lerp(values[before], values[after], share);
}

std::vector<MachineRow> machine_rows(const Wound& wound, const TakeupRun& run, const Moment& moment, Units units) {
  const bool inch = units == Units::inch;
  const auto counter = [inch](double mm) { return figure_in(Amount::fiber_length, mm / 1e3, 1, inch); };
  const std::vector<Stroke>& strokes = wound.build().strokes;
  std::vector<MachineRow> rows{
      {"counter", "Length counter",
       fmt::format("{} of {} {}", counter(moment.length_mm), counter(wound.build().length_mm),
                   unit_in(Amount::fiber_length, inch)),
       ""},
      {"turns", "Turns", fmt::format("{} of {}", figure(moment.turn, 1), figure(wound.build().turns, 1)), ""},
      {"layer", "Layer", fmt::format("{} of {}", moment.layer, strokes.size()), ""}};
  for (const MachineQuantity& quantity : machine_quantities()) {
    if (quantity.of_clutch && !wound.plan().takeup()) continue;
    const std::optional<double> value = value_at(quantity, run, moment.length_mm, moment.layer);
    rows.push_back({quantity.id, quantity.name, value ? text_of(quantity, *value, run, units) : "",
                    value ? "" : missing_key(quantity, wound.plan())});
  }
  add_times(rows, wound, moment);
  return rows;
}

}  // namespace laywright
