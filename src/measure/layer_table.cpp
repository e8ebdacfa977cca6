#include "measure/layer_table.h"

#include <cmath>
#include <numbers>

#include "measure/strand_cursor.h"

namespace laywright {

namespace {

void measure_along(const StrokeView& view, LayerRow& row) {
  const NodeStore& nodes = view.build.nodes;
  const double angle = 2.0 * std::numbers::pi / static_cast<double>(view.stations());
  const double limit = view.gap_limit();
  double radius = 0.0, bridged = 0.0, beside_gap = 0.0;
  for (std::size_t k = view.first; k < view.end; ++k) {
    const double r = nodes.r(k);
    radius += r;
    if (nodes.support(k) == Support::none) bridged += r;
    if (view.gap_right_of(k) > limit) beside_gap += r;
  }
  row.mean_diameter_mm = 2.0 * radius / static_cast<double>(view.end - view.first);
  row.bridged_share = bridged / radius;
  row.gap_length_mm = beside_gap * angle;
}

void measure_over_below(const StrokeView& view, LayerRow& row) {
  const NodeStore& nodes = view.build.nodes;
  StrandCursor below(view.build, view.stroke - 1, StrandCursor::From::last_turn);
  CrossingCounter crossings;
  double rise = 0.0;
  std::size_t count = 0;
  for (std::size_t k = view.first; k < view.end; ++k) {
    below.visit(k);
    if (!below.has_behind() && !below.has_ahead()) continue;
    crossings.add(below.position());
    if (!below.has_behind() || !below.has_ahead()) continue;
    const double r0 = nodes.r(below.behind()), r1 = nodes.r(below.ahead());
    rise += nodes.r(k) - (r0 + below.share() * (r1 - r0));
    ++count;
  }
  row.crossings = crossings.count();
  if (count > 0) row.mean_rise_d = rise / static_cast<double>(count) / view.diameter();
}

}  // namespace

LayerRow layer_row(const StrokeView& view) {
  LayerRow row;
  row.layer = view.layer();
  row.direction = view.direction();
  row.turns = view.turns();
  row.length_mm = view.line.between(view.first, view.end);
  measure_along(view, row);
  if (view.stroke > 0) measure_over_below(view, row);
  return row;
}

}  // namespace laywright
