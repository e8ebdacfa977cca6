#include "figures/wind_rows.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "figures/figures.h"
#include "measure/phrases.h"
#include "measure/severity.h"

namespace laywright {
namespace {

std::string size_in(double mm, bool inch) { return amount_text(Amount::small_length, mm, 2, inch); }

std::string three_sides(const std::array<double, 3>& mm, bool inch) {
  return fmt::format("left {}, middle {}, right {}", size_in(mm[0], inch), size_in(mm[1], inch),
                     size_in(mm[2], inch));
}

// Of the last layer, where it ends on the way.
FigureRow unfinished_row(const UnfinishedLayer& last, bool inch) {
  return {"Unfinished", fmt::format("layer {}", last.layer),
          fmt::format("ends {} from the left flange; with it {}", size_in(last.end_x_mm, inch),
                      three_sides(last.outer_diameter_mm, inch))};
}

FigureRow edge_row(const char* what, double left_mm, double right_mm, bool inch) {
  return {fmt::format("{} at flange", what), size_in(std::max(left_mm, right_mm), inch),
          fmt::format("left {}, right {}", size_in(left_mm, inch), size_in(right_mm, inch))};
}

}  // namespace

std::vector<FigureRow> wind_figures(const Build& build, const Measurements& m, bool inch) {
  const OuterDiameter& outer = m.outer_diameter;
  std::vector<FigureRow> rows{{"Fiber wound", fiber_text(build.length_mm, 5, inch), ""},
                              {"Turns", figure(build.turns, 1), ""},
                              {"Layers", figure(static_cast<double>(m.layers.size()), 0), ""},
                              {"Outer diameter", size_in(outer.greatest_mm, inch),
                               three_sides({outer.left_mm, outer.middle_mm, outer.right_mm}, inch)}};
  if (m.unfinished_layer) rows.push_back(unfinished_row(*m.unfinished_layer, inch));
  if (m.edges) {
    const auto& [left, right] = *m.edges;
    rows.push_back(edge_row("Ridge", left.ridge_mm, right.ridge_mm, inch));
    rows.push_back(edge_row("Valley", left.valley_mm, right.valley_mm, inch));
  }
  rows.push_back({"Fill factor", figure(m.fill_factor, 3), "fiber in the wound volume"});
  double gaps_mm = 0.0;
  for (const LayerRow& layer : m.layers) gaps_mm += layer.gap_length_mm;
  rows.push_back({"Open gaps", fiber_length_text(gaps_mm, inch), "fiber beside a gap over the limit"});
  rows.push_back({"Rim clearance", size_in(m.rim_clearance_mm, inch), ""});
  if (m.wind_time_s) rows.push_back({"Time", duration_text(*m.wind_time_s), "at line speed"});
  if (m.fiber_mass_kg) rows.push_back({"Fiber mass", amount_text(Amount::mass, *m.fiber_mass_kg, 3, inch), ""});
  return rows;
}

LayerCells layer_heads(bool inch) {
  const char *fiber = unit_in(Amount::fiber_length, inch), *small = unit_in(Amount::small_length, inch);
  return {"Layer",
          "Way",
          "Turns",
          fmt::format("Length, {}", fiber),
          fmt::format("Mean \u00D8, {}", small),
          "Rise, d",
          fmt::format("Open gaps, {}", fiber),
          "Crossings",
          "Bridged, %"};
}

LayerCells layer_cells(const LayerRow& layer, bool inch) {
  const auto length = [inch](double mm) { return figure_in(Amount::fiber_length, mm / 1e3, 2, inch); };
  return {figure(layer.layer, 0),
          direction_name(layer.direction),
          figure(layer.turns, 2),
          length(layer.length_mm),
          figure_in(Amount::small_length, layer.mean_diameter_mm, 3, inch),
          layer.mean_rise_d ? figure(*layer.mean_rise_d, 3) : "-",
          length(layer.gap_length_mm),
          figure(layer.crossings, 0),
          figure(100.0 * layer.bridged_share, 1)};
}

std::string finding_line(const Finding& finding, bool inch) {
  return fmt::format("{}, {}{}: {}", rough_size_text(finding.size_mm, inch), layers_of(finding),
                     finding.occurrences > 1 ? fmt::format(", {} places", figure(finding.occurrences, 0)) : "",
                     name_of(finding.severity));
}

}  // namespace laywright
