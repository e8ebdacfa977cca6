#include "measure/flange_reach.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "lay/section.h"

namespace laywright {

namespace {

// Distance from the surface of a fiber at (x, r) to a flange face, along x.
double distance_to_face(const Section& section, Side side, double x, double r) {
  if (side == Side::left) return x - section.left().at(r);
  return section.right().at(r) - x;
}

// The node of either stroke that is outermost at a station.
std::size_t outermost_at(const StrokeView& view, Side side, std::size_t station) {
  const bool left = side == Side::left;
  const std::size_t here = left ? view.here.leftmost(station) : view.here.rightmost(station);
  if (view.stroke == 0) return here;
  const std::size_t before = left ? view.before.leftmost(station) : view.before.rightmost(station);
  if (before == Neighbours::no_node || here == Neighbours::no_node) return std::min(before, here);
  const double x_here = view.build.nodes.x(here);
  const double x_before = view.build.nodes.x(before);
  return (left ? x_before < x_here : x_before > x_here) ? before : here;
}

// Turns of spool between a station and the reversal, the nearer way round; at the start of the wind, onward only.
double turns_from_reversal(const StrokeView& view, std::size_t station) {
  const std::size_t stations = view.stations();
  const std::size_t after = (station + stations - view.first % stations) % stations;
  const std::size_t nearest = view.stroke == 0 ? after : std::min(after, stations - after);
  return static_cast<double>(nearest) / static_cast<double>(stations);
}

}  // namespace

std::optional<FlangeReach> reach_at_start_of(const StrokeView& view) {
  const std::size_t stations = view.stations();
  if (view.end - view.first < stations) return std::nullopt;
  FlangeReach reach;
  reach.side = view.direction() > 0 ? Side::left : Side::right;
  reach.layer = std::max(1, view.layer() - 1);
  reach.distance_mm.resize(stations);
  reach.outermost.resize(stations);
  const double pitch = view.pitch();
  for (std::size_t j = 0; j < stations; ++j) {
    const double theta = 2.0 * std::numbers::pi * static_cast<double>(j) / static_cast<double>(stations);
    const std::size_t node = outermost_at(view, reach.side, j);
    const Section empty = Section::of(view.plan, theta);
    reach.outermost[j] = node;
    reach.distance_mm[j] = distance_to_face(empty, reach.side, view.build.nodes.x(node), view.build.nodes.r(node));
    const double beyond = reach.distance_mm[j] - pitch * turns_from_reversal(view, j);
    if (j == 0 || beyond > reach.size_mm) {
      reach.size_mm = beyond;
      reach.worst_station = j;
    }
  }
  reach.open = reach.size_mm > view.gap_limit();
  return reach;
}

double open_length(const StrokeView& view, const FlangeReach& reach) {
  if (!reach.open) return 0.0;
  const double angle = 2.0 * std::numbers::pi / static_cast<double>(view.stations());
  double sum = 0.0;
  for (std::size_t j = 0; j < reach.distance_mm.size(); ++j) {
    if (reach.distance_mm[j] > view.gap_limit()) sum += view.build.nodes.r(reach.outermost[j]) * angle;
  }
  return sum;
}

}  // namespace laywright
