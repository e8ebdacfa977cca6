#include "measure/findings.h"

#include <algorithm>

#include "measure/gravity.h"
#include "measure/sentences.h"

namespace laywright {

namespace {

// What counts as side by side: two turns, a twelfth of a turn, and the next layer that ends at the same flange.
Nearness nearness(const Plan& plan) {
  return {2.0 * std::max(plan.fiber().diameter_mm, plan.traverse().pitch_mm), 30.0, 2};
}

Finding finding_of(const Plan& plan, const Build& build, const FiberLine& line, const Cluster& cluster) {
  const Occurrence& extent = cluster.extent;
  Finding finding;
  finding.kind = extent.kind;
  finding.layer = extent.layer;
  finding.last_layer = cluster.last_layer;
  // The last node stands beyond the end.
  finding.turn = std::min(build.turns, static_cast<double>(extent.first_node) / build.stations_per_turn);
  finding.side = extent.side;
  finding.x_mm = {extent.x_min_mm, extent.x_max_mm};
  finding.angle_deg = {extent.arc.from_deg, extent.arc.from_deg + extent.arc.span_deg};
  finding.length_mm = {line.at(extent.first_node), line.at(extent.end_node)};
  finding.size_mm = extent.size_mm;
  finding.size_d = extent.size_mm / build.fiber_diameter_mm;
  finding.occurrences = cluster.count;
  finding.places = cluster.places;
  finding.text = sentence(plan, build, finding, cluster);
  return finding;
}

}  // namespace

const char* name_of(FindingKind kind) {
  switch (kind) {
    case FindingKind::gap: return "gap";
    case FindingKind::flange_gap: return "flange_gap";
    case FindingKind::pile_up: return "pile_up";
    case FindingKind::edge_valley: return "edge_valley";
    case FindingKind::ride_up: return "ride_up";
    case FindingKind::dropped_turn: return "dropped_turn";
    case FindingKind::bridge: return "bridge";
    case FindingKind::ribbon: return "ribbon";
    case FindingKind::rim_overrun: return "rim_overrun";
  }
  return "";
}

FindingsMaker::FindingsMaker(const Plan& plan, const Build& build, const FiberLine& line)
    : plan_(plan), build_(build), line_(line) {}

void FindingsMaker::add(const std::vector<Occurrence>& occurrences) {
  for (const Occurrence& occurrence : occurrences) {
    const bool planned = occurrence.kind == FindingKind::gap && is_planned_gap(plan_, occurrence.size_mm);
    const Key key{occurrence.kind, occurrence.side, planned};
    mergers_.try_emplace(key, nearness(plan_)).first->second.add(occurrence);
  }
}

void FindingsMaker::find_in_stroke(const StrokeView& view, const std::optional<FlangeReach>& reach) {
  add(find_gaps(view));
  if (reach) add(find_flange_gap(view, *reach));
  add(find_ride_ups(view));
  add(find_dropped_turns(view));
  add(find_bridges(view));
  add(ribbons_.find(view));
  add(find_rim_overrun(view));
}

void FindingsMaker::find_on_build(const Surface& surface, std::optional<std::size_t> last_whole) {
  if (last_whole) add(find_edges(plan_, build_, surface, *last_whole));
}

std::vector<Finding> FindingsMaker::finish() {
  std::vector<Finding> findings;
  for (auto& [key, merger] : mergers_) {
    for (const Cluster& cluster : merger.finish()) findings.push_back(finding_of(plan_, build_, line_, cluster));
  }
  std::stable_sort(findings.begin(), findings.end(), [this](const Finding& a, const Finding& b) {
    const double gravity_a = gravity(plan_, a), gravity_b = gravity(plan_, b);
    return gravity_a != gravity_b ? gravity_a > gravity_b : a.turn < b.turn;
  });
  return findings;
}

}  // namespace laywright
