#include <algorithm>
#include <cmath>

#include "measure/findings.h"
#include "measure/strand_cursor.h"

namespace laywright {

namespace {

constexpr double coarse_pitch_d = 2.0;
constexpr double stacked_within_d = 0.5;
constexpr double stacked_share = 0.6;

struct Stacking {
  double share = 0.0;    // of the fiber beside a turn of the other stroke
  double rise_mm = 0.0;  // mean over that turn
};

Stacking stacking_on(const StrokeView& view, std::size_t earlier) {
  const NodeStore& nodes = view.build.nodes;
  const double within = stacked_within_d * view.diameter();
  StrandCursor strands(view.build, earlier, StrandCursor::From::first_turn);
  std::size_t stacked = 0;
  double rise = 0.0;
  for (std::size_t k = view.first; k < view.end; ++k) {
    strands.visit(k);
    double nearest = 2.0 * within, r = 0.0;
    const auto look = [&](std::size_t strand) {
      const double off = std::abs(nodes.x(strand) - nodes.x(k));
      if (off < nearest) {
        nearest = off;
        r = nodes.r(strand);
      }
    };
    if (strands.has_behind()) look(strands.behind());
    if (strands.has_ahead()) look(strands.ahead());
    if (nearest > within) continue;
    ++stacked;
    rise += nodes.r(k) - r;
  }
  if (stacked == 0) return {};
  return {static_cast<double>(stacked) / static_cast<double>(view.end - view.first),
          rise / static_cast<double>(stacked)};
}

}  // namespace

std::vector<Occurrence> RibbonFinder::find(const StrokeView& view) {
  heights_.emplace_back(most_double_strokes, 0.0);
  if (view.pitch() <= coarse_pitch_d * view.diameter()) return {};
  double stack = 0.0;
  for (std::size_t m = 1; m <= most_double_strokes && 2 * m <= view.stroke; ++m) {
    const std::size_t earlier = view.stroke - 2 * m;
    const Stacking stacking = stacking_on(view, earlier);
    if (stacking.share < stacked_share) continue;
    const double under = heights_[earlier][m - 1];
    heights_.back()[m - 1] = (under > 0.0 ? under : view.diameter()) + stacking.rise_mm;
    // A stack of three begins to be a ribbon.
    if (under > 0.0) stack = std::max(stack, heights_.back()[m - 1]);
  }
  if (stack == 0.0) return {};
  const NodeStore& nodes = view.build.nodes;
  Occurrence found;
  found.kind = FindingKind::ribbon;
  found.layer = view.layer();
  found.first_node = view.first;
  found.end_node = view.end;
  found.x_min_mm = std::min(nodes.x(view.first), nodes.x(view.end - 1));
  found.x_max_mm = std::max(nodes.x(view.first), nodes.x(view.end - 1));
  found.arc = Arc::all_round();
  found.size_mm = stack;
  found.worst_node = view.first;
  const std::size_t before = view.build.strokes[view.stroke - 2].first_node;
  found.detail = static_cast<double>(view.first - before) / static_cast<double>(view.stations());
  return {found};
}

}  // namespace laywright
