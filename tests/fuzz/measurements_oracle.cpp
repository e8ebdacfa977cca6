#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string>

#include <fmt/format.h>

#include "fuzz/oracles.h"
#include "fuzz/require.h"

namespace laywright::fuzz {
namespace {

// Circles are packed no denser than in hexagons: pi / sqrt(12).
constexpr double densest = 0.9069;

void require_finite(std::initializer_list<double> values, const char* what) {
  for (const double value : values)
    require(std::isfinite(value), fmt::format("{} is a number, not {}", what, value));
}

void require_layers(const Build& build, const Measurements& measured) {
  require(measured.layers.size() == build.strokes.size(), "each stroke is a layer");
  double turns = 0.0;
  double length = 0.0;
  for (const LayerRow& row : measured.layers) {
    require_finite(
        {row.turns, row.length_mm, row.mean_diameter_mm, row.mean_rise_d.value_or(0.0), row.gap_length_mm,
         row.flange_gap_length_mm, row.outer_diameter_mm[0], row.outer_diameter_mm[1], row.outer_diameter_mm[2]},
        "a figure of a layer");
    require(row.bridged_share >= 0.0 && row.bridged_share <= 1.0 + 1e-9, "a layer's bridged share is a share");
    require(row.crossings >= 0 && row.gap_length_mm >= 0.0 && row.flange_gap_length_mm >= 0.0,
            "nothing is counted below zero");
    turns += row.turns;
    length += row.length_mm;
  }
  require(std::abs(turns - build.turns) <= 1e-9 * build.turns + 1e-12, "the layers' turns are those of the wind");
  require(std::abs(length - build.length_mm) <= 1e-9 * build.length_mm + 1e-9, "the layers' lengths are the wind's");
}

// Of a plain spool, that of hexagons. A corner that opens wider than a square one, or a fiber that is thick against the
// barrel, leaves a lone turn less than that about it. A slanting turn is longer than the circles that are drawn of it.
double most_fill(const Plan& plan, const Build& build) {
  const Spool& spool = plan.spool();
  const bool plain = spool.flange_taper_rad == 0.0 && spool.barrel_taper_mm == 0.0 &&
                     spool.flange_runout_mm == 0.0 && spool.barrel_diameter_mm > 20.0 * build.fiber_diameter_mm;
  double arcs = 0.0;
  const double angle = 2.0 * std::numbers::pi / build.stations_per_turn;
  for (std::size_t k = 1; k < build.nodes.size(); ++k) arcs += angle * build.nodes.r(k);
  const double slant = arcs > 0.0 ? std::max(1.0, build.length_mm / arcs) : 1.0;
  return (plain ? densest : 1.0) * slant;
}

void require_surface(const Plan& plan, const Build& build, const Measurements& measured) {
  const OuterDiameter& outer = measured.outer_diameter;
  require_finite({outer.left_mm, outer.middle_mm, outer.right_mm, outer.greatest_mm, measured.rim_clearance_mm},
                 "an outer diameter");
  const double most = most_fill(plan, build);
  require(measured.fill_factor >= 0.0 && measured.fill_factor <= most,
          fmt::format("no build is denser than circles can be: {} of {}", measured.fill_factor, most));
  require(measured.fill_factor > 0.0 || build.length_mm == 0.0, "what is laid fills something");
  // Heights are kept as floats.
  const double slack = 1e-5 * plan.fiber().diameter_mm + 1e-6 * outer.greatest_mm;
  require(measured.rim_clearance_mm >= -slack, "a wind stops before it passes the rim");
  const SurfaceProfile& surface = measured.surface;
  for (std::size_t i = 0; i < surface.x_mm.size(); ++i) {
    require(
        surface.least_mm[i] <= surface.mean_mm[i] + slack && surface.mean_mm[i] <= surface.greatest_mm[i] + slack,
        "the mean surface lies between the least and the greatest");
    require(surface.greatest_mm[i] <= 0.5 * outer.greatest_mm + slack, "no surface is above the greatest");
  }
}

void require_finding(const Plan& plan, const Build& build, const Finding& finding) {
  const auto layers = static_cast<int>(build.strokes.size());
  const std::string name = name_of(finding.kind);
  require(finding.layer >= 1 && finding.layer <= finding.last_layer && finding.last_layer <= layers,
          name + " lies in layers of the wind");
  require(finding.turn >= 0.0 && finding.turn <= build.turns, name + " begins within the wind");
  const Spool& spool = plan.spool();
  const double height =
      0.5 * (spool.flange_diameter_mm - spool.barrel_diameter_mm + std::abs(spool.barrel_taper_mm));
  const double slack = 1e-6 * plan.fiber().diameter_mm;
  const double out = height * std::tan(spool.flange_taper_rad) + spool.flange_runout_mm + slack;
  require(finding.x_mm[0] <= finding.x_mm[1] && finding.x_mm[0] >= -out &&
              finding.x_mm[1] <= spool.inside_width_mm + out,
          fmt::format("{} lies between the flanges: {} to {}", name, finding.x_mm[0], finding.x_mm[1]));
  require(finding.angle_deg[0] >= 0.0 && finding.angle_deg[0] <= finding.angle_deg[1] &&
              finding.angle_deg[1] <= 720.0 && finding.angle_deg[1] - finding.angle_deg[0] <= 360.0 + 1e-9,
          fmt::format("{} has an angle: {} to {}", name, finding.angle_deg[0], finding.angle_deg[1]));
  require(finding.length_mm[0] >= 0.0 && finding.length_mm[0] <= finding.length_mm[1] &&
              finding.length_mm[1] <= build.length_mm * (1.0 + 1e-9),
          fmt::format("{} lies on the fiber: {} to {} of {}", name, finding.length_mm[0], finding.length_mm[1],
                      build.length_mm));
  require(finding.size_mm >= 0.0 && std::isfinite(finding.size_mm) && std::isfinite(finding.size_d),
          name + " has a size");
  require(!finding.text.empty(), name + " has a sentence");
}

void require_places(const Build& build, const Finding& finding) {
  const std::string name = name_of(finding.kind);
  require(finding.occurrences >= static_cast<int>(finding.places.size()), name + " counts all its places");
  for (const FindingPlace& place : finding.places) {
    require(
        place.first_node <= place.node && place.node < build.nodes.size() && place.end_node <= build.nodes.size(),
        fmt::format("a place of {} lies on the fiber: {} to {}, {} of {}", name, place.first_node, place.end_node,
                    place.node, build.nodes.size()));
    require(place.size_mm <= finding.size_mm, "no place of " + name + " is larger than the finding");
  }
}

}  // namespace

void require_measurements(const Plan& plan, const Build& build, const Measurements& measured) {
  require_layers(build, measured);
  require_surface(plan, build, measured);
  for (const Finding& finding : measured.findings) {
    require_finding(plan, build, finding);
    require_places(build, finding);
  }
}

}  // namespace laywright::fuzz
