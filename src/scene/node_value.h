// The value of each node under a colouring.
#pragma once

#include <optional>

#include "scene/scene_source.h"

namespace laywright {

// Height of a node over the layer below at the same place, d: over the straight line between the two turns of the
// layer before that it lies between, at its station (as the layer table does). None in the first layer, and where no
// such pair is near. Both turns are sought from the turn of that layer nearest in x, up to four turns either way.
[[nodiscard]] std::optional<double> rise_d(const SceneSource& source, std::size_t node);

// Clear distance to the nearest turn of the same layer, on the wider side, d; among the turns up to four before and
// after. None where it has no neighbour.
[[nodiscard]] std::optional<double> gap_d(const SceneSource& source, std::size_t node);

// Which payoff a colouring tells; none of the others.
[[nodiscard]] std::optional<DrawOff> payoff_way(Colouring colouring);

// A few thousand nodes of the last two layers that are shown, evenly along the fiber; and of all that is laid.
[[nodiscard]] std::vector<std::size_t> newest_layers(const SceneSource& source, const View& view);
[[nodiscard]] std::vector<std::size_t> all_along(const SceneSource& source);

// What heights are told in, mm.
[[nodiscard]] double height_unit_mm(Units units);

// In the unit of the legend; none for colourings without a scale, and where there is none. A payoff is computed when it
// is not known yet.
class NodeValue {
 public:
  NodeValue(const SceneSource& source, const View& view);

  [[nodiscard]] std::optional<double> operator()(std::size_t node) const;

 private:
  const SceneSource& source_;
  Colouring colouring_;
  Units units_;
  double middle_mm_ = 0.0;     // outer radius of the middle of the spool
  LatePayoff::Forces forces_;  // of a payoff alone
};

}  // namespace laywright
