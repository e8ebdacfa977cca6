// How fine a solid model can be so that its file stays small.
#pragma once

#include <optional>
#include <string>

#include "base/result.h"
#include "export/tube.h"

namespace laywright {

struct GlbSettings {
  LayerRange layers;
  // Sides of the tube, 3 to 32, and how far its surface may lie off the fiber's, mm. Where neither is given, both are
  // chosen so that the file is not larger than `most_bytes`; where one is, it is kept and a file that would be larger
  // is refused.
  std::optional<int> sides;
  std::optional<double> tolerance_mm;
  double most_bytes = 50e6;
  Numbers numbers = Numbers::small;
  bool flanges_see_through = false;
};

struct GlbFit {
  ThinnedLine line;
  int sides = 6;
  double bytes = 0.0;  // of the file, at most
  std::string note;    // what was reduced, a sentence; empty when nothing was
};

// Without settings: six sides, and rings to match. A file that would be too large gets fewer of both, until the
// surface is off by a quarter of a diameter; then the layers next to the barrel are left out.
// Errors: the layers are not there, or it is too large all the same. Precondition: the range begins at 1 or more.
[[nodiscard]] Result<GlbFit> fit_glb(const Build& build, const NodePlaces& places, const GlbSettings& settings);

}  // namespace laywright
