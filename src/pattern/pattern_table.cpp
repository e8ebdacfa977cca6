#include "pattern/pattern_table.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include <fmt/format.h>

#include "plan/layer_setting.h"

namespace laywright {
namespace {

using std::numbers::pi;

// With these the outer diameters come out near those of builds of the lay model.
constexpr double crossed_fill = 0.6, close_fill = 0.9;

// How the wind grows, layer by layer.
struct Growth {
  double diameter_mm = 0.0;  // of the centre line
  double turns = 0.0, length_mm = 0.0;
  int layer = 1;
  bool over = false;
};

void grow_by_a_layer(Growth& growth, const Plan& plan, const GuideCycle& cycle) {
  const double d = plan.fiber().diameter_mm;
  const double cosine = std::cos(winding_angle_rad(cycle.pitch_mm, growth.diameter_mm));
  const double turns = 0.5 * winding_ratio(cycle);
  const double fill = cycle.pitch_mm > close_wind_d * d ? crossed_fill : close_fill;
  // A turn shows d^2 pi / 4 / cosine in a section along the axis.
  const double rise = turns * 0.25 * pi * d * d / (cosine * fill * plan.spool().inside_width_mm);
  growth.turns += turns;
  growth.length_mm += turns * pi * (growth.diameter_mm + rise) / cosine;
  const Wind& wind = plan.wind();
  const double rim = wind.diameter_mm.value_or(plan.spool().flange_diameter_mm) - d;
  const double grown = growth.diameter_mm + 2.0 * rise;
  growth.over = grown >= rim || (wind.turns && growth.turns >= *wind.turns) ||
                (wind.length_mm && growth.length_mm >= *wind.length_mm);
  // A wind that is to end within its first layer ends there.
  growth.diameter_mm = std::clamp(grown, growth.diameter_mm, std::max(growth.diameter_mm, rim));
}

// Moves of the strand that lies nearest, b double strokes later: each of 2 b strokes brings the scatter of its stop
// twice, once into its own way and once into that of the next one, and its pitch's over the whole way; the seat in the
// eye, evenly anywhere within half the play, counts at both strands.
double scatter_of(const Traverse& traverse, const GuideCycle& cycle, int starts, double diameter_mm, double d_mm) {
  const double strokes = 2.0 * starts;
  const double stops = 2.0 * std::sqrt(strokes) * traverse.reversal.stop_scatter_mm;
  const double pitch = std::sqrt(strokes) * traverse.pitch_scatter * (cycle.stroke_mm + cycle.lost_motion_mm);
  const double play = 0.5 * traverse.guide_play_mm / std::sqrt(6.0);
  return std::hypot(stops, pitch, play) * std::cos(winding_angle_rad(cycle.pitch_mm, diameter_mm)) / d_mm;
}

std::vector<SafeSetting> sound_ones(const Plan& plan, const PatternRow& row, std::vector<SafeSetting> all) {
  const auto unsound = [&](const SafeSetting& setting) {
    PlanDraft draft = plan.draft();
    const bool pitch = setting.what == SafeSetting::What::pitch;
    if (row.step) {
      WindStep& step = draft.wind.steps[*row.step];
      (pitch ? step.pitch_mm : step.right_stop_mm) = setting.value_mm;
    } else {
      (pitch ? draft.traverse.pitch_mm : draft.traverse.right_stop_mm) = setting.value_mm;
    }
    return !check(draft).ok();
  };
  all.erase(std::remove_if(all.begin(), all.end(), unsound), all.end());
  return all;
}

// What follows from the row's settings and diameters.
void judge(PatternRow& row, const Plan& plan, double gap_d) {
  const double d = plan.fiber().diameter_mm, pitch = row.cycle.pitch_mm;
  row.inside_angle_rad = winding_angle_rad(pitch, row.inside_mm);
  row.outside_angle_rad = winding_angle_rad(pitch, row.outside_mm);
  row.pattern = pattern_of(row.cycle, d, row.inside_mm, gap_d);
  if (row.pattern.kind == PatternKind::close_wind) return;
  row.outside_ahead_d = row.pattern.nearest.ahead_mm * std::cos(row.outside_angle_rad) / d;
  row.scatter_d = scatter_of(row.traverse, row.cycle, row.pattern.nearest.starts, row.inside_mm, d);
  if (row.pattern.kind == PatternKind::close_pattern) return;
  row.safe = sound_ones(plan, row, safe_settings(plan.spool(), row.traverse, d, row.inside_mm, gap_d));
}

}  // namespace

std::string key_of(const PatternRow& row, SafeSetting::What what) {
  const std::string table = row.step ? fmt::format("wind.step[{}]", *row.step) : "traverse";
  return table + (what == SafeSetting::What::pitch ? ".pitch" : ".right_stop");
}

PatternTable patterns(const Plan& plan, double gap_d) {
  PatternTable table;
  table.gap_d = gap_d;
  table.stepped = plan.traverse().motion == Motion::stepped;
  if (table.stepped) return table;

  const std::vector<WindStep>& steps = plan.wind().steps;
  Growth growth;
  growth.diameter_mm = plan.spool().least_barrel_diameter_mm() + plan.fiber().diameter_mm;
  Traverse traverse = plan.traverse();
  std::optional<std::size_t> step;
  std::size_t next = 0;
  if (!steps.empty() && steps.front().from_layer <= 1) {
    apply(steps.front(), traverse);
    step = next++;
  }
  for (;;) {
    PatternRow row;
    row.traverse = traverse;
    row.step = step;
    row.cycle = guide_cycle(plan.spool(), row.traverse);
    row.from_layer = growth.layer;
    row.inside_mm = growth.diameter_mm;
    row.reached = !growth.over;
    const bool last = next == steps.size();
    while (!growth.over && (last || growth.layer < steps[next].from_layer)) {
      grow_by_a_layer(growth, plan, row.cycle);
      ++growth.layer;
    }
    row.to_layer = growth.layer - 1;
    row.outside_mm = growth.diameter_mm;
    judge(row, plan, gap_d);
    table.rows.push_back(row);
    if (last) break;
    apply(steps[next], traverse);
    growth.layer = std::max(growth.layer, steps[next].from_layer);
    step = next++;
  }
  return table;
}

}  // namespace laywright
