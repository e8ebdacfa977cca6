#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "fuzz/oracles.h"
#include "fuzz/require.h"
#include "lay/penetration_checker.h"

namespace laywright::fuzz {
namespace {

constexpr double deepest_d = 1e-6;
constexpr double conserved = 1e-9;

// The straight pieces between the nodes, up to the end of the wind, in long double.
long double length_along(const Build& build) {
  const NodeStore& nodes = build.nodes;
  const long double angle = 2.0L * std::numbers::pi_v<long double> / build.stations_per_turn;
  const long double end = static_cast<long double>(build.turns) * build.stations_per_turn;
  long double length = 0.0L;
  for (std::size_t k = 1; k < nodes.size(); ++k) {
    const long double share = std::clamp(end - static_cast<long double>(k - 1), 0.0L, 1.0L);
    const long double dx = static_cast<long double>(nodes.x(k)) - nodes.x(k - 1);
    const long double dr = static_cast<long double>(nodes.r(k)) - nodes.r(k - 1);
    const long double arc = 0.5L * angle * (static_cast<long double>(nodes.r(k)) + nodes.r(k - 1));
    length += share * std::sqrt(arc * arc + dx * dx + dr * dr);
  }
  return length;
}

bool near(double a, double b) { return std::abs(a - b) <= conserved * std::max(std::abs(a), std::abs(b)); }

void require_end(const Plan& plan, const Build& build) {
  const Wind& wind = plan.wind();
  const auto along = static_cast<double>(length_along(build));
  require(std::isfinite(build.length_mm) && std::isfinite(build.turns), "length and turns are finite");
  // Near the start of a wind the last bits of the grid are a greater part of so short a piece.
  const double grid = build.nodes.x_grid().step_mm + build.nodes.r_grid().step_mm;
  require(near(build.length_mm, along) || std::abs(build.length_mm - along) < grid,
          fmt::format("the length laid, {}, is that along the nodes, {}", build.length_mm, along));
  switch (build.stopped_by) {
    case StopReason::length:
      require(wind.length_mm && build.length_mm == *wind.length_mm, "a wind by length ends at its length");
      break;
    case StopReason::turns:
      require(wind.turns && build.turns == *wind.turns, "a wind by turns ends at its turns");
      break;
    case StopReason::diameter: require(wind.diameter_mm.has_value(), "only a wind by diameter ends at it"); break;
    case StopReason::rim:
      require(!wind.length_mm || build.length_mm < *wind.length_mm, "a wind that the rim stopped is shorter");
      require(!wind.turns || build.turns <= *wind.turns, "a wind that the rim stopped has fewer turns");
  }
}

void require_turns(const Build& build) {
  const auto nodes = static_cast<double>(build.nodes.size());
  const double end = build.turns * build.stations_per_turn;
  require(nodes - 1.0 >= end - 1e-6 || build.nodes.size() == 0, "the last node lies at or after the end");
  require(nodes - 2.0 <= end + 1e-6, "no node is laid for nothing");
}

void require_strokes(const Build& build) {
  if (build.nodes.size() == 0) {
    require(build.strokes.empty(), "where nothing is laid there is no stroke");
    return;
  }
  require(!build.strokes.empty() && build.strokes.front().first_node == 0, "the first stroke begins the wind");
  for (std::size_t s = 1; s < build.strokes.size(); ++s) {
    const Stroke& stroke = build.strokes[s];
    require(stroke.first_node > build.strokes[s - 1].first_node, "strokes stand in their order");
    require(stroke.first_node < build.nodes.size(), "a stroke begins within the wind");
  }
}

// Also false for what is not a number.
void require_nodes_on_spool(const Plan& plan, const Build& build) {
  const Spool& spool = plan.spool();
  const double d = plan.fiber().diameter_mm;
  const double inner = 0.5 * spool.least_barrel_diameter_mm();
  const double rim = 0.5 * spool.flange_diameter_mm;
  const double out = (rim - inner) * std::tan(spool.flange_taper_rad) + spool.flange_runout_mm;
  // A cone goes on where a flange leans away from its end.
  const double thin = inner - 0.5 * std::abs(spool.barrel_taper_mm) / spool.inside_width_mm * out;
  for (std::size_t k = 0; k < build.nodes.size(); ++k) {
    const double x = build.nodes.x(k);
    const double r = build.nodes.r(k);
    require(x > -out && x < spool.inside_width_mm + out,
            fmt::format("node {} at x {} lies within the flanges", k, x));
    require(r > thin && r + 0.5 * d <= rim + deepest_d * d,
            fmt::format("node {} at r {} lies within the rim", k, r));
  }
}

}  // namespace

void require_build(const Plan& plan, const Build& build) {
  require(build.stations_per_turn >= 16, "there are stations");
  require_nodes_on_spool(plan, build);
  require_turns(build);
  require_strokes(build);
  require_end(plan, build);
  const referee::Clearance clearance = referee::clearance(plan, build);
  require(clearance.least > -deepest_d, clearance.text());
}

}  // namespace laywright::fuzz
