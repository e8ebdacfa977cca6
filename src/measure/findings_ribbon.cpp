#include <algorithm>
#include <cmath>
#include <numbers>

#include "measure/findings.h"
#include "measure/strand_cursor.h"
#include "plan/guide_cycle.h"

namespace laywright {

namespace {

constexpr double stacked_within_d = 0.5;
constexpr double stacked_share = 0.6;
constexpr double back_within_d = 0.5;
constexpr double crowded_length = 0.2;  // phases at random: about half (each stroke's own length) / sqrt(8) = .18
constexpr std::size_t fewest_strokes = 8;

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

// Where a node stands in the pattern of its stroke, in turns.
double phase_of(const StrokeView& view, std::size_t node) {
  const double angle = static_cast<double>(node % view.stations()) / static_cast<double>(view.stations());
  return view.build.nodes.x(node) / view.plan.traverse().pitch_mm - view.direction() * angle;
}

}  // namespace

double RibbonFinder::stack_height(const StrokeView& view) {
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
  return stack;
}

std::optional<double> RibbonFinder::ridge_height(const StrokeView& view, double turns_per_double_stroke) {
  const std::size_t side = view.direction() > 0 ? 1 : 0;
  Phases own{};
  for (std::size_t k = view.first; k < view.end; ++k) {
    const std::complex<double> place = std::polar(1.0, 2.0 * std::numbers::pi * phase_of(view, k));
    std::complex<double> power = 1.0;
    for (std::complex<double>& sum : own) sum += power *= place;
  }
  for (std::size_t m = 0; m < own.size(); ++m)
    phases_[side][m] += own[m] / static_cast<double>(view.end - view.first);
  const std::size_t seen = ++strokes_seen_[side];
  std::optional<double> height;
  for (std::size_t m = 1; m <= most_double_strokes && seen >= fewest_strokes * m; ++m) {
    const double turns = turns_per_double_stroke * static_cast<double>(m);
    const double off_mm = std::abs(turns - std::round(turns)) * view.plan.traverse().pitch_mm;
    const std::complex<double> mean = phases_[side][m - 1] / static_cast<double>(seen);
    if (off_mm > back_within_d * view.diameter() || std::abs(mean) < crowded_length) continue;
    double crowded = 0.0, other = 0.0;
    std::size_t crowded_nodes = 0;
    for (std::size_t k = view.first; k < view.end; ++k) {
      const double turned = 2.0 * std::numbers::pi * static_cast<double>(m) * phase_of(view, k) - std::arg(mean);
      const bool in_crowd = std::cos(turned) > 0.0;
      (in_crowd ? crowded : other) += view.build.nodes.r(k);
      if (in_crowd) ++crowded_nodes;
    }
    const std::size_t other_nodes = view.end - view.first - crowded_nodes;
    if (crowded_nodes == 0 || other_nodes == 0) continue;
    const double higher = crowded / static_cast<double>(crowded_nodes) - other / static_cast<double>(other_nodes);
    height = std::max(height.value_or(0.0), higher);
  }
  return height;
}

std::vector<Occurrence> RibbonFinder::find(const StrokeView& view) {
  heights_.emplace_back(most_double_strokes, 0.0);
  if (view.stroke < 2 || view.pitch() <= close_wind_d * view.diameter()) return {};
  const std::size_t before = view.build.strokes[view.stroke - 2].first_node;
  const double turns = static_cast<double>(view.first - before) / static_cast<double>(view.stations());
  const double stack = stack_height(view);
  const std::optional<double> ridge = ridge_height(view, turns);
  if (stack == 0.0 && !ridge) return {};
  const NodeStore& nodes = view.build.nodes;
  Occurrence found;
  found.kind = FindingKind::ribbon;
  found.layer = view.layer();
  found.first_node = view.first;
  found.end_node = view.end;
  found.x_min_mm = std::min(nodes.x(view.first), nodes.x(view.end - 1));
  found.x_max_mm = std::max(nodes.x(view.first), nodes.x(view.end - 1));
  found.arc = Arc::all_round();
  found.size_mm = std::max(stack, ridge.value_or(0.0));
  found.worst_node = view.first;
  found.detail = turns;
  return {found};
}

}  // namespace laywright
