// How near the fiber comes to a flange where it reverses.
//
// Around a reversal the fiber touches the flange, at best, at one angle, and stands off by up to half a pitch
// elsewhere, because it comes and goes with the pitch. The turns of both strokes count: at each station the
// distance from the flange face to the outermost turn of either. A reversal is open when that distance exceeds
// the limit by more than the pitch makes unavoidable, at any angle. Then the gap is where the distance itself
// exceeds the limit. The start of the wind counts as a reversal of the first layer; the end of the last stroke
// does not, since it is not known how far it would have gone, nor does a reversal whose second stroke is shorter
// than one turn.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "measure/stroke_view.h"
#include "plan/lay_plan.h"

namespace laywright {

struct FlangeReach {
  Side side = Side::left;
  int layer = 1;  // that ends there (the first, for the start of the wind)
  bool open = false;
  double size_mm = 0.0;  // greatest distance beyond what the pitch makes unavoidable
  std::size_t worst_station = 0;
  std::vector<double> distance_mm;     // fiber surface to flange face, by station
  std::vector<std::size_t> outermost;  // node, by station
};

// The reversal at which the view's stroke begins.
[[nodiscard]] std::optional<FlangeReach> reach_at_start_of(const StrokeView& view);

// Fiber length beside which the reversal leaves a gap over the limit, mm.
[[nodiscard]] double open_length(const StrokeView& view, const FlangeReach& reach);

}  // namespace laywright
