// Puts a drawing into a file's bytes.
#pragma once

#include <string>

#include "report/drawing.h"

namespace laywright {

// Scalable; letters are outlines, so that it looks the same where the font is missing. Empty when cairo fails.
[[nodiscard]] std::string to_svg(const Drawing& drawing);

// On white. Empty when cairo fails (out of memory).
[[nodiscard]] std::string to_png(const Drawing& drawing, double dots_per_inch = 200.0);

}  // namespace laywright
