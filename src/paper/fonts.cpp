#include "paper/fonts.h"

#include <memory>

#include <cairo.h>

namespace laywright {

Issues missing_fonts() {
  const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
      cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1), &cairo_surface_destroy);
  const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> context(cairo_create(surface.get()), &cairo_destroy);
  cairo_select_font_face(context.get(), "sans-serif", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  // Where Fontconfig finds nothing, cairo draws strokes of its own, as a program's font.
  cairo_scaled_font_t* const letters = cairo_get_scaled_font(context.get());
  if (cairo_scaled_font_get_type(letters) != CAIRO_FONT_TYPE_USER) return {};
  Issue issue;
  issue.severity = Severity::warning;
  issue.what =
      "no fonts are installed on this system, so words are drawn in plain strokes, and signs that those lack, such "
      "as that of a diameter, are boxes; install fonts (on Debian: fonts-dejavu-core)";
  return {issue};
}

}  // namespace laywright
