#include <algorithm>
#include <cmath>

#include "plan/guide_cycle.h"
#include "plan/layer_setting.h"
#include "takeup/formulas.h"
#include "takeup/parts.h"

namespace laywright {
namespace {

constexpr std::size_t even_samples = 240;
constexpr std::size_t most_layer_ends = 200;

std::vector<double> sample_lengths(const TurnLine& line) {
  std::vector<double> lengths;
  for (std::size_t i = 0; i <= even_samples; ++i) {
    lengths.push_back(line.total_mm() * static_cast<double>(i) / even_samples);
  }
  const std::size_t every = 1 + (line.layers() - 1) / most_layer_ends;
  for (std::size_t layer = every - 1; layer < line.layers(); layer += every) {
    lengths.push_back(line.end_of_layer_mm(layer));
  }
  std::sort(lengths.begin(), lengths.end());
  lengths.erase(std::unique(lengths.begin(), lengths.end()), lengths.end());
  return lengths;
}

void add_speeds(const MachineWind& wind, MachineCurves& curves) {
  const std::optional<double> speed = wind.plan.wind().line_speed_mm_per_s;
  if (!speed) return;
  for (std::size_t i = 0; i < curves.length_mm.size(); ++i) {
    const double rpm = spool_speed_rpm(*speed, wind.line.length_per_turn_mm(wind.line.turn_at(curves.length_mm[i])));
    curves.time_s.push_back(curves.length_mm[i] / *speed);
    curves.spool_rpm.push_back(rpm);
    curves.traverse_mm_per_s.push_back(rpm / 60.0 * traverse_in_layer(wind.plan, curves.layer[i]).pitch_mm);
    curves.reversals_per_min.push_back(rpm * curves.reversals_per_turn[i]);
  }
}

void add_pull(const MachineWind& wind, MachineCurves& curves) {
  const Fiber& fiber = wind.plan.fiber();
  for (const double radius : curves.radius_mm) {
    const std::optional<double> tension = planned_tension(wind, radius);
    if (!tension) return;
    curves.tension_N.push_back(*tension);
    curves.torque_Nmm.push_back(*tension * radius);
    if (fiber.core_diameter_mm) {
      curves.stress_MPa.push_back(core_stress_MPa(*tension, *fiber.core_diameter_mm));
      if (fiber.modulus_MPa) curves.strain.push_back(curves.stress_MPa.back() / *fiber.modulus_MPa);
    }
    if (fiber.max_tension_N) curves.load_share.push_back(*tension / *fiber.max_tension_N);
  }
}

void add_slip(const Plan& plan, MachineCurves& curves) {
  if (!plan.takeup() || !plan.takeup()->speed_ceiling_rpm) return;
  for (std::size_t i = 0; i < curves.spool_rpm.size(); ++i) {
    const double slip = std::max(0.0, *plan.takeup()->speed_ceiling_rpm - curves.spool_rpm[i]);
    curves.slip_rpm.push_back(slip);
    if (!curves.torque_Nmm.empty()) curves.clutch_heat_W.push_back(clutch_heat_W(curves.torque_Nmm[i], slip));
  }
}

// Thin rings of fiber, turn by turn: sum of m r^2.
void add_inertia(const MachineWind& wind, MachineCurves& curves) {
  const std::optional<double> mass = wind.plan.fiber().linear_mass_g_per_km;
  if (!mass) return;
  const double rim_m = 0.5e-3 * wind.plan.spool().flange_diameter_mm;
  double inertia = wind.plan.spool().mass_kg.value_or(0.0) * rim_m * rim_m;
  const auto ring = [&](std::size_t turn, double length_mm) {
    const double radius_m = 1e-3 * wind.line.radius_mm(turn);
    return 1e-9 * *mass * length_mm * radius_m * radius_m;  // g/km is 1e-9 kg/mm
  };
  std::size_t turn = 0;
  for (const double length : curves.length_mm) {
    const std::size_t here = wind.line.turn_at(length);
    for (; turn < here; ++turn) inertia += ring(turn, wind.line.start_mm(turn + 1) - wind.line.start_mm(turn));
    curves.inertia_kg_m2.push_back(inertia + ring(here, length - wind.line.start_mm(here)));
  }
  for (std::size_t i = 0; i < curves.spool_rpm.size(); ++i) {
    curves.ramp_torque_Nmm.push_back(ramp_torque_Nmm(curves.inertia_kg_m2[i], curves.spool_rpm[i], stated_ramp_s));
  }
}

}  // namespace

double MachineWind::turns_of_layer(std::size_t layer) const {
  const std::vector<LayerRow>& rows = measurements.layers;
  const double turns = rows[layer].turns;
  if (layer + 1 != rows.size()) return turns;
  if (layer > 0) return std::max(turns, rows[layer - 1].turns);
  if (!measurements.unfinished_layer) return turns;
  const GuideCycle cycle = guide_cycle(plan.spool(), plan.traverse());
  return std::max(turns, cycle.stroke_mm / cycle.pitch_mm);
}

std::optional<double> planned_tension(const MachineWind& wind, double radius_mm) {
  const std::optional<double> start = wind.plan.wind().tension_N;
  if (!start || !wind.plan.takeup()) return std::nullopt;
  return tension_at(*wind.plan.takeup(), *start, wind.line.radius_mm(0), radius_mm);
}

MachineCurves make_curves(const MachineWind& wind) {
  MachineCurves curves;
  for (const double length : sample_lengths(wind.line)) {
    const std::size_t layer = wind.line.layer_at(length);
    curves.length_mm.push_back(length);
    curves.turn.push_back(wind.line.angle_at(length));
    curves.layer.push_back(static_cast<int>(layer) + 1);
    curves.radius_mm.push_back(wind.line.radius_mm(wind.line.turn_at(length)));
    curves.reversals_per_turn.push_back(1.0 / wind.turns_of_layer(layer));
  }
  add_speeds(wind, curves);
  add_pull(wind, curves);
  curves.current_A = clutch_currents(wind.plan, curves);
  add_slip(wind.plan, curves);
  add_inertia(wind, curves);
  return curves;
}

}  // namespace laywright
