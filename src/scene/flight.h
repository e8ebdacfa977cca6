// The way of a camera from one place to another.
#pragma once

#include "scene/view.h"

namespace laywright {

// The camera after a share of the way, 0 to 1, clamped; exactly `from` and `to` at its ends. It starts and stops softly,
// goes round the spool and not through it (what it looks at keeps its distance from the axis, and the eye steps back
// on a long way), and turns the shorter way. Projection and field of view are those of `to`.
[[nodiscard]] Camera camera_between(const Camera& from, const Camera& to, double share);

}  // namespace laywright
