// Turns that are out of their layer: climbed on a neighbour, or fallen into a gap.
#include <algorithm>
#include <cmath>

#include "measure/findings.h"
#include "measure/local_mean.h"
#include "measure/runs.h"

namespace laywright {

namespace {

constexpr double dropped_by_d = 0.8;
constexpr double fallen_by_d = 0.5;
constexpr double closed_pitch_d = 2.0;

// How much the higher of its neighbours in x stands above a node; negative when it is the highest.
double below_a_neighbour(const StrokeView& view, std::size_t k) {
  const NodeStore& nodes = view.build.nodes;
  double most = -view.diameter();
  for (const std::size_t next : {view.here.left_of(k), view.here.right_of(k)}) {
    if (next != Neighbours::no_node) most = std::max(most, nodes.r(next) - nodes.r(k));
  }
  return most;
}

// How much a node stands above the lower of its neighbours that are near enough to climb on.
double above_a_neighbour(const StrokeView& view, std::size_t k) {
  const NodeStore& nodes = view.build.nodes;
  double most = 0.0;
  for (const std::size_t next : {view.here.left_of(k), view.here.right_of(k)}) {
    if (next == Neighbours::no_node || std::abs(nodes.x(next) - nodes.x(k)) > view.diameter()) continue;
    most = std::max(most, nodes.r(k) - nodes.r(next));
  }
  return most;
}

void add_node(const StrokeView& view, Runs& runs, std::size_t k, double size) {
  const double x = view.build.nodes.x(k);
  const double half = 0.5 * view.diameter();
  runs.add(k, size, x - half, x + half);
}

}  // namespace

std::vector<Occurrence> find_ride_ups(const StrokeView& view) {
  const NodeStore& nodes = view.build.nodes;
  Runs runs(view, FindingKind::ride_up);
  for (std::size_t k = view.first; k < view.end; ++k) {
    if (!nodes.rides_up(k)) continue;
    add_node(view, runs, k, std::max(above_a_neighbour(view, k), 0.5 * view.diameter()));
  }
  return runs.finish();
}

std::vector<Occurrence> find_dropped_turns(const StrokeView& view) {
  if (view.stroke == 0 || view.pitch() >= closed_pitch_d * view.diameter()) return {};
  const NodeStore& nodes = view.build.nodes;
  const double limit = dropped_by_d * view.diameter();
  const LocalMean mean(view);
  if (!mean.any_turn_is_off()) return {};
  Runs runs(view, FindingKind::dropped_turn);
  for (std::size_t k = view.first; k < view.end; ++k) {
    const double depth = mean.at(nodes.x(k)) - nodes.r(k);
    if (depth <= limit || below_a_neighbour(view, k) <= fallen_by_d * view.diameter()) continue;
    add_node(view, runs, k, depth);
  }
  return runs.finish();
}

}  // namespace laywright
