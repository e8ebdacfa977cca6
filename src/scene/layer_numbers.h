// Where the numbers of layers are written on the faces of cuts.
#pragma once

#include <vector>

#include "scene/scene_source.h"

namespace laywright {

struct LayerNumber {
  int layer = 1;
  Vec3 place{0.0, 0.0, 0.0};    // the middle of a turn of it, near the middle of the spool
  Vec3 outward{0.0, 1.0, 0.0};  // from the axis: layers follow one another in this direction
  Vec3 facing{0.0, 0.0, 1.0};   // of the face: seen from there
};

// Of all layers that the view shows on a face through the axis at this angle, inner ones first; all of them, however
// small they may look. `looks_onward`: the face is seen from rising angles.
[[nodiscard]] std::vector<LayerNumber> layer_numbers(const SceneSource& source, const View& view, double angle,
                                                     bool looks_onward);

}  // namespace laywright
