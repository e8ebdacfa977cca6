// What a colour says: the value of each node under a colouring, its colour, and the legend. Values are computed for
// the nodes that are asked for, so that a change of colouring costs no more than the surface.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/colour_range.h"
#include "scene/node_value.h"
#include "scene/scene_source.h"

namespace laywright {

struct LegendTick {
  double share = 0.0;  // place along the scale, 0 to 1
  std::string text;    // without the unit
};

struct LegendEntry {
  Rgba colour;
  std::string text;
};

// Either a scale (colours of even shares from low to high, and ticks) or entries.
struct Legend {
  std::string title;
  std::string unit;  // empty where there is none
  double low = 0.0, high = 0.0;
  std::vector<Rgba> scale;
  std::vector<LegendTick> ticks;
  std::vector<LegendEntry> entries;
};

// Computes what the colouring needs and is not known yet, so that a Colourer of it takes no time: of a payoff, half as long as laying
// does. False when cancelled.
[[nodiscard]] bool make_ready(const SceneSource& source, Colouring colouring, Progress& progress);

// Colours of a view, over the range that it has for its colouring, else over that of its own build (colour_range.h).
class Colourer {
 public:
  Colourer(const SceneSource& source, const View& view);

  // Colour of a node; grey where it has no value.
  [[nodiscard]] Rgba colour(std::size_t node) const;
  // In the unit of the legend; none for colourings without a scale, and where there is none.
  [[nodiscard]] std::optional<double> value(std::size_t node) const { return value_(node); }
  [[nodiscard]] const Legend& legend() const { return legend_; }

 private:
  const SceneSource& source_;
  Colouring colouring_;
  NodeValue value_;
  std::optional<ColourRange> range_;
  Legend legend_;
};

// Ticks at round figures (1, 2 or 5 times a power of ten), three to nine of them, for low < high.
[[nodiscard]] std::vector<LegendTick> round_ticks(double low, double high);

}  // namespace laywright
