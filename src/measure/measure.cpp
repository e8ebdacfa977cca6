#include <optional>
#include <utility>

#include "measure/findings.h"
#include "measure/flange_reach.h"
#include "measure/layer_table.h"
#include "measure/measurements.h"
#include "measure/severity.h"
#include "measure/surface.h"
#include "measure/whole_stroke.h"

namespace laywright {

namespace {

void measure_totals(const Plan& plan, const Build& build, Measurements& out) {
  if (plan.fiber().linear_mass_g_per_km) {
    constexpr double km_per_mm = 1.0e-6, kg_per_g = 1.0e-3;
    out.fiber_mass_kg = *plan.fiber().linear_mass_g_per_km * build.length_mm * km_per_mm * kg_per_g;
  }
  if (plan.wind().line_speed_mm_per_s) out.wind_time_s = build.length_mm / *plan.wind().line_speed_mm_per_s;
}

}  // namespace

Measurements measure(const Plan& plan, const Build& build, Progress& progress) {
  Measurements out;
  measure_totals(plan, build, out);

  const Surface surface = find_surface(plan, build, progress);
  if (progress.cancelled()) return out;
  out.surface = surface.profile;
  const std::optional<std::size_t> last_whole = last_whole_stroke(plan, build);
  out.outer_diameter = outer_diameter(build, surface, last_whole);
  out.unfinished_layer = unfinished_layer(build, surface, last_whole);
  if (last_whole) out.edges = surface.edges[*last_whole];
  out.fill_factor = fill_factor(build, surface);
  out.rim_clearance_mm = 0.5 * plan.spool().flange_diameter_mm - surface.greatest_mm;

  progress.report(0.5);

  const FiberLine line(build);
  FindingsMaker findings(plan, build, line);
  Neighbours here, before;
  for (std::size_t s = 0; s < build.strokes.size(); ++s) {
    if (progress.cancelled()) return out;
    std::swap(here, before);
    here.find(build, s);
    const StrokeView view(plan, build, line, s, here, before);
    const std::optional<FlangeReach> reach = reach_at_start_of(view);
    out.layers.push_back(layer_row(view));
    for (std::size_t zone = 0; zone < zone_count; ++zone) {
      out.layers.back().outer_diameter_mm[zone] = 2.0 * surface.after_stroke[s][zone];
    }
    if (last_whole && s <= *last_whole) out.layers.back().edges = surface.edges[s];
    if (reach) {
      LayerRow& row = out.layers[static_cast<std::size_t>(reach->layer) - 1];
      row.flange_gap_length_mm += open_length(view, *reach);
      row.gap_length_mm += open_length(view, *reach);
    }
    findings.find_in_stroke(view, reach);
    progress.report(0.5 + 0.5 * static_cast<double>(s + 1) / static_cast<double>(build.strokes.size()));
  }
  findings.find_on_build(surface, last_whole);
  out.findings = findings.finish();
  set_severities(plan, build, out);
  return out;
}

}  // namespace laywright
