// How wide a layer lies.
#pragma once

#include <cstddef>

#include "lay/build.h"

namespace laywright {

// Over the outermost turns of a stroke, mm; 0 where it has none. Precondition: stroke < build.strokes.size().
[[nodiscard]] double layer_width_mm(const Build& build, std::size_t stroke);

}  // namespace laywright
