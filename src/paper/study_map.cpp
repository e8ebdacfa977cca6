#include "paper/study_map.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "advise/study_statistics.h"
#include "figures/figures.h"
#include "paper/drafting.h"
#include "paper/study_panels.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr double map_margin = 12.0, top = 30.0, gutter = 6.0;

// What a person who winds looks at first.
constexpr std::array<std::string_view, 6> panel_figures{
    "outer_diameter_greatest_mm", "rim_clearance_mm", "gap_length_m", "pile_up_mm",
    "edge_deviation_mm",          "fill_factor"};

void draw_heading(Drawing& drawing, const Study& study) {
  put_title(drawing, {map_margin, 17.0});
  std::string words = "Study of " + counted(study.rows.size(), "build");
  if (study.spec.is_grid())
    words += study.spec.axes.size() == 2
                 ? "; verdict: a dot is good, a ring marginal, neither is do not wind; hatched: no sound plan"
                 : "; verdict: a dot is good, a ring marginal, a point do not wind";
  drawing.add(Text{{map_margin, 23.5}, words, 3.2, Align::start, false, false, faint_ink});
}

void draw_grid(Drawing& drawing, const Study& study) {
  const double width = (drawing.width_mm - 2.0 * map_margin - 2.0 * gutter) / 3.0;
  const double height = (drawing.height_mm - top - map_margin - gutter) / 2.0;
  for (std::size_t i = 0; i < panel_figures.size(); ++i) {
    const auto column = static_cast<double>(i % 3), row = static_cast<double>(i / 3);
    const Box box{map_margin + column * (width + gutter), top + row * (height + gutter), width, height};
    const std::size_t figure = Study::figure(panel_figures[i]);
    study.spec.axes.size() == 2 ? draw_map(drawing, box, study, figure) : draw_curve(drawing, box, study, figure);
  }
}

void draw_tolerances(Drawing& drawing, const Study& study) {
  const ToleranceStatistics statistics = tolerance_statistics(study);
  const std::size_t greatest = Study::figure("outer_diameter_greatest_mm");
  std::vector<double> diameters;
  for (const StudyRow& row : study.rows) {
    if (is_independent(study, row) && !row.figures.empty()) diameters.push_back(row.figures[greatest]);
  }
  const double width = (drawing.width_mm - 2.0 * map_margin - gutter) / 2.0;
  const double height = drawing.height_mm - top - map_margin;
  draw_histogram(drawing, {map_margin, top, width, height}, diameters, "Outer diameter, greatest, mm");
  std::vector<ShareBar> bars;
  for (std::size_t i = 0; i < statistics.shares.size(); ++i) {
    const std::string& path = study.spec.tolerances[i].path;
    bars.push_back({path == scatter_path ? "scatter of strokes" : path, statistics.shares[i].first,
                    statistics.shares[i].total});
  }
  draw_shares(drawing, {map_margin + width + gutter, top, width, height}, bars);
}

}  // namespace

Color map_color(double share) {
  constexpr std::array<std::array<int, 3>, 9> codes{{{0xFF, 0xFF, 0xD9},
                                                     {0xED, 0xF8, 0xB1},
                                                     {0xC7, 0xE9, 0xB4},
                                                     {0x7F, 0xCD, 0xBB},
                                                     {0x41, 0xB6, 0xC4},
                                                     {0x1D, 0x91, 0xC0},
                                                     {0x22, 0x5E, 0xA8},
                                                     {0x25, 0x34, 0x94},
                                                     {0x08, 0x1D, 0x58}}};
  const double at = std::clamp(share, 0.0, 1.0) * (codes.size() - 1);
  const std::size_t i = std::min(static_cast<std::size_t>(at), codes.size() - 2);
  const double between = at - static_cast<double>(i);
  const auto mixed = [&](std::size_t part) {
    return (codes[i][part] + between * (codes[i + 1][part] - codes[i][part])) / 255.0;
  };
  return {mixed(0), mixed(1), mixed(2)};
}

Drawing study_map(const Study& study) {
  Drawing drawing;
  drawing.title = title_of(study.plan);
  if (!study.spec.is_grid()) drawing.height_mm = 120.0;
  draw_heading(drawing, study);
  study.spec.is_grid() ? draw_grid(drawing, study) : draw_tolerances(drawing, study);
  return drawing;
}

}  // namespace laywright
