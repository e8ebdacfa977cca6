// What a colour says: the value of each node under a colouring, its colour, and the legend. Values are computed for
// the nodes that are asked for, so that a change of colouring costs no more than the surface.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/scene_source.h"

namespace laywright {

// Height of a node over the layer below at the same place, d: over the straight line between the two turns of the
// layer before that it lies between, at its station (as the layer table does). None in the first layer, and where no
// such pair is near. Both turns are sought from the turn of that layer nearest in x, up to four turns either way.
[[nodiscard]] std::optional<double> rise_d(const SceneSource& source, std::size_t node);

// Clear distance to the nearest turn of the same layer, on the wider side, d; among the turns up to four before and
// after. None where it has no neighbour.
[[nodiscard]] std::optional<double> gap_d(const SceneSource& source, std::size_t node);

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

// Which payoff a colouring tells; none of the others.
[[nodiscard]] std::optional<DrawOff> payoff_way(Colouring colouring);

// Computes what the colouring needs and is not known yet, so that a Colourer of it takes no time: of a payoff, half as long as laying
// does. False when cancelled.
[[nodiscard]] bool make_ready(const SceneSource& source, Colouring colouring, Progress& progress);

// Colours of a view. Scales span round figures around what the newest layers of the visible fiber have, but for one
// node in fifty.
class Colourer {
 public:
  Colourer(const SceneSource& source, const View& view);

  // Colour of a node; grey where it has no value.
  [[nodiscard]] Rgba colour(std::size_t node) const;
  // In the unit of the legend; none for colourings without a scale, and where there is none.
  [[nodiscard]] std::optional<double> value(std::size_t node) const;
  [[nodiscard]] const Legend& legend() const { return legend_; }

 private:
  const SceneSource& source_;
  Colouring colouring_;
  Units units_;
  double middle_mm_ = 0.0;     // outer radius of the middle of the spool
  LatePayoff::Forces forces_;  // of a payoff alone
  Legend legend_;
};

// Ticks at round figures (1, 2 or 5 times a power of ten), three to nine of them, for low < high.
[[nodiscard]] std::vector<LegendTick> round_ticks(double low, double high);

}  // namespace laywright
