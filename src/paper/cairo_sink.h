// Puts a drawing into a file's bytes.
#pragma once

#include <string>
#include <vector>

#include "paper/drawing.h"

namespace laywright {

// Scalable; letters are outlines, so that it looks the same where the font is missing. Empty when cairo fails.
[[nodiscard]] std::string to_svg(const Drawing& drawing);

// On white. Empty when cairo fails (out of memory).
[[nodiscard]] std::string to_png(const Drawing& drawing, double dots_per_inch = 200.0);

// The same as pixels, the box left open. Without pixels when cairo fails.
[[nodiscard]] Bitmap to_pixels(const Drawing& drawing, double dots_per_inch);

// One page per drawing, each of its own size; letters stay text that can be searched and copied. The title is that of
// the first. Empty when cairo fails or there are no pages.
[[nodiscard]] std::string to_pdf(const std::vector<Drawing>& pages);

}  // namespace laywright
