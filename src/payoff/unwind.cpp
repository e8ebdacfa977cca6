// What lies around each node when it is drawn off. Only what was laid before it is there: so the build is gone through in the
// order in which it was laid, and each node is looked at just before its circle is added to its station's section.
#include <algorithm>
#include <cmath>

#include "payoff/contacts.h"
#include "payoff/hold.h"
#include "payoff/parts.h"
#include "payoff/way_out.h"

namespace laywright {
namespace {

constexpr double nested_rise_d = 0.87;  // of a layer over the one below

void add_covered(std::vector<Covered>& covered, std::size_t node) {
  if (!covered.empty() && covered.back().end_node == node) {
    covered.back().end_node = node + 1;
  } else {
    covered.push_back({node, node + 1});
  }
}

}  // namespace

Unwinding unwind(const Plan& plan, const Build& build, DrawOff way, Progress& progress) {
  constexpr std::size_t report_every = 1 << 16;
  const NodeStore& nodes = build.nodes;
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const double least_lean = jamming_lean_rad(payoff_friction(plan.fiber().friction)), d = build.fiber_diameter_mm;
  const double rim_mm = 0.5 * plan.spool().flange_diameter_mm;
  const Side end = way == DrawOff::over_left ? Side::left : Side::right;
  std::vector<Section> sections = Section::ring(plan, build.stations_per_turn);
  Unwinding found;
  if (way != DrawOff::side) found.bends_rad.resize(nodes.size());
  std::size_t stroke = 0;
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    if (k % report_every == 0) {
      if (progress.cancelled()) return found;
      progress.report(static_cast<double>(k) / static_cast<double>(nodes.size()));
    }
    while (stroke + 1 < build.strokes.size() && build.strokes[stroke + 1].first_node <= k) ++stroke;
    Section& section = sections[k % stations];
    sections[(k + 2) % stations].bring_near();
    if (!build.diameters.even()) section.admit(build.diameters.half_mm(k));
    const double x = nodes.x(k), r = nodes.r(k);
    const Surroundings around = surroundings(section, x, r, least_lean);
    if (around.under) {
      // The section is what shows from above: this one does not.
      add_covered(found.covered, k);
      continue;
    }
    if (around.lean_rad) found.slits.push_back({k, *around.lean_rad, 0.0});
    if (way != DrawOff::side) found.bends_rad[k] = static_cast<float>(bend_over_end(section, end, rim_mm, x, r));
    section.insert(x, r, static_cast<std::uint32_t>(stroke));
  }
  for (InSlit& slit : found.slits) {
    const double over = sections[slit.node % stations].height(nodes.x(slit.node)).r - nodes.r(slit.node);
    slit.turns_above = std::max(0.0, (over / d - 1.0) / nested_rise_d);
  }
  return found;
}

}  // namespace laywright
