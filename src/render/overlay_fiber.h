// The free fiber between guide and spool, as lines of the picture that words keep clear of.
#pragma once

#include <vector>

#include "render/overlay.h"
#include "render/overlay_room.h"

namespace laywright {

// Of each guide its fiber as far as it is before the eye, and a cross as large as the guide's own eye.
[[nodiscard]] std::vector<OverlayLine> free_fibers(const View& view, const std::vector<GuideInWay>& guides);

}  // namespace laywright
