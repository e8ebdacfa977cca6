#include <numbers>

#include "measure/surface.h"

namespace laywright {

OuterDiameter outer_diameter(const Build& build, const Surface& surface, std::optional<std::size_t> last_whole) {
  OuterDiameter diameter;
  diameter.greatest_mm = 2.0 * surface.greatest_mm;
  if (surface.greatest_node) {
    const std::size_t node = *surface.greatest_node;
    const auto stations = static_cast<std::size_t>(build.stations_per_turn);
    diameter.greatest_at = {build.nodes.x(node),
                            360.0 * static_cast<double>(node % stations) / build.stations_per_turn};
  }
  if (surface.after_stroke.empty()) return diameter;
  const ZoneRadii& radii = surface.after_stroke[last_whole.value_or(surface.after_stroke.size() - 1)];
  diameter.left_mm = 2.0 * radii[static_cast<std::size_t>(Zone::left)];
  diameter.middle_mm = 2.0 * radii[static_cast<std::size_t>(Zone::middle)];
  diameter.right_mm = 2.0 * radii[static_cast<std::size_t>(Zone::right)];
  return diameter;
}

std::optional<UnfinishedLayer> unfinished_layer(const Build& build, const Surface& surface,
                                                std::optional<std::size_t> last_whole) {
  const std::size_t strokes = build.strokes.size();
  if (strokes == 0 || last_whole == strokes - 1) return std::nullopt;
  UnfinishedLayer last;
  last.layer = static_cast<int>(strokes);
  last.turns = build.turns - static_cast<double>(build.strokes.back().first_node) / build.stations_per_turn;
  last.end_x_mm = build.nodes.x(build.nodes.size() - 1);
  for (std::size_t zone = 0; zone < zone_count; ++zone) {
    last.outer_diameter_mm[zone] = 2.0 * surface.after_stroke.back()[zone];
  }
  return last;
}

double fill_factor(const Build& build, const Surface& surface) {
  const double d = build.fiber_diameter_mm;
  const double fiber = 0.25 * std::numbers::pi * d * d * build.length_mm;
  // Nothing laid, nothing filled.
  return surface.volume_mm3 > 0.0 ? fiber / surface.volume_mm3 : 0.0;
}

}  // namespace laywright
