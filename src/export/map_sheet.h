// The wound surface, or a layer, unrolled onto an A4 page: x against the angle around the spool, with a legend, rulers
// and the lines on which turns cross those below.
#pragma once

#include "paper/drawing.h"
#include "scene/scene_source.h"

namespace laywright {

// Of the view: the layers, the end of the wind, the colouring and the units. The lines are those of the newest layer
// that is shown, where nothing lies over it.
[[nodiscard]] Drawing draw_map_sheet(const SceneSource& source, const View& view);

}  // namespace laywright
