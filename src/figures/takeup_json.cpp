#include "figures/takeup_json.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/units.h"
#include "figures/json_number.h"
#include "figures/machine_text.h"
#include "plan/fields.h"

namespace laywright {
namespace {

using Json = nlohmann::ordered_json;

constexpr double newton_metre = 1e3;  // of N mm

// What a key of this dimension ends with; lengths are mm, angles deg, shares plain.
const char* suffix(Dimension dimension) {
  switch (dimension) {
    case Dimension::force: return "_N";
    case Dimension::speed: return "_mm_per_s";
    case Dimension::mass: return "_kg";
    case Dimension::linear_mass: return "_g_per_km";
    case Dimension::torque: return "_Nmm";
    case Dimension::stress: return "_MPa";
    case Dimension::time: return "_s";
    case Dimension::rotation_speed: return "_rpm";
    case Dimension::current: return "_A";
    case Dimension::length:
    case Dimension::angle:
    case Dimension::share: return "";
  }
  return "";
}

Json field_value(const FieldInfo& field, const std::optional<double>& value) {
  if (!value) return nullptr;
  if (field.kind == FieldKind::choice || *value == Fiber::held) return write_value(field, *value);
  const bool angle = field.kind == FieldKind::quantity && field.dimension == Dimension::angle;
  return number(angle ? *value * deg_per_rad : *value);
}

// The plan's own settings, table by table.
Json settings(const Plan& plan) {
  Json tables = Json::object();
  for (const auto& field : plan_fields()) {
    const std::string key =
        std::string(field.key) + (field.kind == FieldKind::quantity ? suffix(field.dimension) : "");
    tables[std::string(field.table)][key] = field_value(field, field.get(plan.draft()));
  }
  return tables;
}

Json list(const std::vector<double>& values, double unit = 1.0) {
  if (values.empty()) return nullptr;
  Json numbers = Json::array();
  for (const double value : values) numbers.push_back(number(value / unit));
  return numbers;
}

Json curves(const MachineCurves& c) {
  return {{"length_m", list(c.length_mm, mm_per_m)},
          {"turn", list(c.turn)},
          {"layer", c.layer},
          {"radius", list(c.radius_mm)},
          {"time_s", list(c.time_s)},
          {"spool_speed_rpm", list(c.spool_rpm)},
          {"traverse_speed_mm_per_s", list(c.traverse_mm_per_s)},
          {"reversals_per_min", list(c.reversals_per_min)},
          {"tension_N", list(c.tension_N)},
          {"torque_Nm", list(c.torque_Nmm, newton_metre)},
          {"current_A", list(c.current_A)},
          {"slip_rpm", list(c.slip_rpm)},
          {"clutch_heat_W", list(c.clutch_heat_W)},
          {"inertia_kg_m2", list(c.inertia_kg_m2)},
          {"ramp_torque_Nm", list(c.ramp_torque_Nmm, newton_metre)},
          {"stress_MPa", list(c.stress_MPa)},
          {"strain", list(c.strain)},
          {"load_share", list(c.load_share)}};
}

Json ends(const std::vector<double>& values, double unit = 1.0) {
  if (values.empty()) return nullptr;
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  return {{"empty", number(values.front() / unit)},
          {"full", number(values.back() / unit)},
          {"least", number(*least / unit)},
          {"greatest", number(*greatest / unit)}};
}

Json ranges(const MachineCurves& c) {
  return {{"winding_diameter", ends(c.radius_mm, 0.5)},
          {"spool_speed_rpm", ends(c.spool_rpm)},
          {"traverse_speed_mm_per_s", ends(c.traverse_mm_per_s)},
          {"reversals_per_min", ends(c.reversals_per_min)},
          {"tension_N", ends(c.tension_N)},
          {"torque_Nm", ends(c.torque_Nmm, newton_metre)},
          {"current_A", ends(c.current_A)},
          {"slip_rpm", ends(c.slip_rpm)},
          {"clutch_heat_W", ends(c.clutch_heat_W)},
          {"inertia_kg_m2", ends(c.inertia_kg_m2)},
          {"ramp_torque_Nm", ends(c.ramp_torque_Nmm, newton_metre)},
          {"stress_MPa", ends(c.stress_MPa)},
          {"strain", ends(c.strain)},
          {"load_share", ends(c.load_share)}};
}

Json checkpoints(const std::vector<Checkpoint>& all) {
  Json rows = Json::array();
  for (const Checkpoint& c : all) {
    rows.push_back({{"layer", c.layer},
                    {"at_end", c.at_end},
                    {"counter_m", number(c.length_mm / mm_per_m)},
                    {"counter_reading", number(c.counter_reading)},
                    {"turns", number(c.turns)},
                    {"time_s", number(c.time_s)},
                    {"outer_diameter", sides_json(c.outer_diameter_mm)}});
  }
  return rows;
}

Json steps(const std::vector<StepPlace>& all) {
  Json rows = Json::array();
  for (const StepPlace& s : all) {
    rows.push_back({{"from_layer", s.from_layer},
                    {"counter_m", number(s.length_mm, mm_per_m)},
                    {"counter_reading", number(s.counter_reading)},
                    {"turns", number(s.turns)},
                    {"pitch", number(s.pitch_mm)},
                    {"left_stop", number(s.left_stop_mm)},
                    {"right_stop", number(s.right_stop_mm)}});
  }
  return rows;
}

const char* name_of(LengthStop mode) {
  switch (mode) {
    case LengthStop::stop: return "stop";
    case LengthStop::signal: return "signal";
    case LengthStop::both: return "both";
  }
  return "";
}

Json counter(const CounterSetting& c) {
  return {{"mode", name_of(c.mode)},
          {"end_m", number(c.end_mm / mm_per_m)},
          {"reaction_time_s", number(c.reaction_time_s)},
          {"lead_m", number(c.lead_mm, mm_per_m)},
          {"set_to_m", number(c.set_to_mm, mm_per_m)},
          {"per_ramp_second_m", number(c.per_ramp_second_mm, mm_per_m)},
          {"reading", c.reading ? number(c.reading->reading) : Json(nullptr)},
          {"reading_unit", c.reading ? Json(c.reading->unit) : Json(nullptr)},
          {"reading_end_m", c.reading ? number(c.reading->end_mm / mm_per_m) : Json(nullptr)}};
}

Json profile(const PressureEstimate::Profile& p) {
  return {{"stiffness_ratio", number(p.stiffness_ratio)}, {"barrel_MPa", number(p.barrel_MPa)},
          {"flange_force_N", number(p.flange_force_N)},   {"least_hoop_MPa", number(p.least_hoop_MPa)},
          {"pressure_MPa", list(p.pressure_MPa)},         {"hoop_MPa", list(p.hoop_MPa)}};
}

Json pressure(const std::optional<PressureEstimate>& p) {
  if (!p) return nullptr;
  return {{"note", pressure_assumptions(*p)},
          {"wound_stress_MPa", number(p->wound_stress_MPa)},
          {"one_layer_MPa", number(p->one_layer_MPa)},
          {"radius", list(p->radius_mm)},
          {"stiff", profile(p->stiff)},
          {"soft", profile(p->soft)}};
}

Json warnings(const std::vector<MachineWarning>& all) {
  Json rows = Json::array();
  for (const MachineWarning& w : all) {
    Json figures = Json::object();
    for (const auto& figure : w.figures) figures[figure.name] = number(figure.value);
    rows.push_back({{"kind", name_of(w.kind)}, {"note", w.note}, {"text", w.text}, {"figures", std::move(figures)}});
  }
  return rows;
}

Json missing(const std::vector<MissingKey>& all) {
  Json rows = Json::array();
  for (const MissingKey& key : all) rows.push_back({{"key", key.key}, {"gives", key.gives}});
  return rows;
}

Json fleet(const std::optional<FleetAngle>& f) {
  if (!f) return nullptr;
  return {{"steady", number(f->steady_deg)}, {"greatest", number(f->greatest_deg)}, {"at_turn", number(f->at_turn)}};
}

Json reversal(const std::optional<GuideReversal>& r) {
  if (!r) return nullptr;
  return {{"guide_speed_mm_per_s", number(r->speed_mm_per_s)},
          {"time_s", number(r->time_s)},
          {"acceleration_mm_per_s2", number(r->acceleration_mm_per_s2)},
          {"hidden_time_s", number(r->hidden_time_s)}};
}

Json hold(const HoldLimits& h) {
  return {{"least_tension_N", number(h.least_tension_N)},
          {"friction_at_reversal", number(h.friction_at_reversal)},
          {"capstan_ratio_per_turn", number(h.capstan_ratio_per_turn)},
          {"shortest_start_s", number(h.shortest_start_s)},
          {"shortest_stop_s", number(h.shortest_stop_s)}};
}

}  // namespace

Json takeup_block(const Plan& plan, const TakeupRun& run) {
  return {{"settings", settings(plan)},
          {"time_s", number(run.time_s)},
          {"least_speed_ceiling_rpm", number(run.least_speed_ceiling_rpm)},
          {"ramp_time_s", stated_ramp_s},
          {"ranges", ranges(run.curves)},
          {"counter", counter(run.counter)},
          {"checkpoints", checkpoints(run.checkpoints)},
          {"steps", steps(run.steps)},
          {"fleet_angle", fleet(run.fleet)},
          {"reversal", reversal(run.reversal)},
          {"hold", hold(run.hold)},
          {"bend_strain", number(run.bend_strain)},
          {"bend_stress_MPa", number(run.bend_stress_MPa)},
          {"pressure_estimate", pressure(run.pressure)},
          {"warnings", warnings(run.warnings)},
          {"missing", missing(run.missing)},
          {"curves", curves(run.curves)}};
}

}  // namespace laywright
