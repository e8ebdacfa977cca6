// The figures of a wind in rows: the same words and figures in the window, on the share page and in text, metric or in inches
// and feet.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "lay/build.h"
#include "measure/measurements.h"

namespace laywright {

struct FigureRow {
  std::string name, value;
  std::string more;  // what it is, or its parts; may be empty
};

// Of the whole: what the measurements do not tell is left out.
[[nodiscard]] std::vector<FigureRow> wind_figures(const Build& build, const Measurements& measurements, bool inch);

// Of a layer: its number, way, turns, length, mean diameter, rise in d, fiber beside open gaps, crossings, share that bridges in %.
using LayerCells = std::array<std::string, 9>;
[[nodiscard]] LayerCells layer_heads(bool inch);
[[nodiscard]] LayerCells layer_cells(const LayerRow& layer, bool inch);

// "0.42 mm, layers 3 to 4, 12 places: worth a look".
[[nodiscard]] std::string finding_line(const Finding& finding, bool inch);

}  // namespace laywright
