// A sender's mark from a file, drawn anew: of the file itself nothing goes on, only what it shows.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/result.h"
#include "render/image.h"

namespace laywright {

inline constexpr std::size_t largest_logo_bytes = 2'000'000;
inline constexpr int largest_logo_px = 4096;  // width and height that a PNG may say it has
inline constexpr int drawn_logo_px = 800;     // no side of what is made of it is longer

// A PNG or an SVG, known by what it holds and not by its name. A PNG is decoded (cairo, libpng), an SVG is rendered (librsvg);
// both come smaller where they are larger than what is drawn, an SVG of no size of its own as large.
// Errors: cannot be read, or larger than `largest_logo_bytes`; neither of both; a PNG that is damaged or has more pixels than
// `largest_logo_px` by that; an SVG that is damaged or that has a script, an event's script, an entity, a style sheet, foreign
// content, or refers to anything outside itself (the render would leave these out; they are refused so that nobody wonders).
[[nodiscard]] Result<Image> read_logo(const std::string& file);

// The same of bytes; `file` is named in the issues.
[[nodiscard]] Result<Image> logo_from(std::string_view bytes, const std::string& file);

}  // namespace laywright
