// Figures of a build by name, for lessons: what they count, and how they are written.
//
//   turns, length, layers, fill, gap_length, rim_clearance
//   outer.left, outer.middle, outer.right, outer.greatest          diameters
//   edges_over_middle                  mean of both edges' radii less that of the middle; negative: valleys
//   edge_difference                    how far the two edges' radii are apart
//   layer2.turns, layer2.diameter, layer2.rise, layer2.crossings, layer2.bridged, layer2.gap_length
//   gap.places, gap.size               of the findings of a kind: how often, and the greatest; 0 where there is none
//   ratio                              turns of the spool per double stroke, of the whole wind's strokes
//   edges.ridge, edges.valley          the greater of both flanges', after the last whole stroke
//   drawn_off.caught                   share of the fiber that needs more than the plan's limit, drawn over the left end
//   drawn_off.mean                     mean pull there, in times that of winding
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "lay/build.h"
#include "measure/measurements.h"

namespace laywright {

// Of the figures that need the pull that draws the fiber off.
inline constexpr std::string_view drawn_off_start = "drawn_off.";

// A build of a lesson as it came out.
struct LaidBuild {
  const Build* build = nullptr;
  const Measurements* measurements = nullptr;
  // By node, in times the pull of winding, over the left end; null where the lesson does not speak of it.
  const std::vector<float>* drawn_off = nullptr;
  double most_pull = 1.0;  // the plan's limit of it
};

struct FigureKind {
  std::string label;                   // "turns in layer 2"
  std::optional<Dimension> dimension;  // none: a plain number
  std::string suffix;                  // of a plain number: "turns", "d", "%"
  int decimals = 0;
  double shown_times = 1.0;  // of a plain number: 100 for a share in percent
};

// None where there is no such figure.
[[nodiscard]] std::optional<FigureKind> figure_kind(std::string_view name);

// In the unit used inside; none where the build has no such thing (a layer that was not reached).
// Precondition: it is laid.
[[nodiscard]] std::optional<double> figure_of(std::string_view name, const LaidBuild& laid);

// "12.4 m"; in inches and feet on demand.
[[nodiscard]] std::string figure_text(const FigureKind& kind, double value, bool inch = false);

}  // namespace laywright
