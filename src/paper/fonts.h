// Whether there are letters to write drawings and pictures with.
#pragma once

#include "base/issue.h"

namespace laywright {

// A warning where the system has no letters at all: words are then written in strokes, and signs such as the diameter's
// are boxes. Else empty.
[[nodiscard]] Issues missing_fonts();

}  // namespace laywright
