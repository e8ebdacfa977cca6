// The part of a logo that is an SVG, and what both kinds of it share.
#pragma once

#include <array>
#include <memory>
#include <string>
#include <string_view>

#include <cairo.h>

#include "base/result.h"
#include "render/image.h"

namespace laywright {

using LogoSurface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;

// Clear all over.
[[nodiscard]] LogoSurface logo_surface(int width, int height);
// Width and height, made smaller where they are larger than what is drawn (`drawn_logo_px`).
[[nodiscard]] std::array<int, 2> fitted_logo(double width, double height);
// Empty where the surface could not be drawn.
[[nodiscard]] Image pixels_of(cairo_surface_t* surface);

// See logo_from().
[[nodiscard]] Result<Image> svg_logo(std::string_view bytes, const std::string& file);

}  // namespace laywright
