#include "paper/cairo_sink.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <memory>
#include <numbers>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include "base/addresses.h"
#include "base/inch.h"

namespace laywright {
namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Context = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
  return CAIRO_STATUS_SUCCESS;
}

void use(cairo_t* cr, const Color& color) { cairo_set_source_rgb(cr, color.red, color.green, color.blue); }

// Draws the items; the context's unit is the millimetre.
class Painter {
 public:
  explicit Painter(cairo_t* cr) : cr_(cr) {
    cairo_set_line_join(cr_, CAIRO_LINE_JOIN_MITER);
    cairo_set_line_cap(cr_, CAIRO_LINE_CAP_BUTT);
  }

  void operator()(const Shape& shape) const {
    for (const Point& p : shape.points) cairo_line_to(cr_, p.x, p.y);
    if (shape.closed) cairo_close_path(cr_);
    if (shape.fill) {
      use(cr_, *shape.fill);
      cairo_fill_preserve(cr_);
    }
    if (shape.pen) {
      use(cr_, shape.pen->color);
      cairo_set_line_width(cr_, shape.pen->width_mm);
      cairo_set_dash(cr_, shape.pen->dashes_mm.data(), static_cast<int>(shape.pen->dashes_mm.size()), 0.0);
      cairo_stroke_preserve(cr_);
    }
    cairo_new_path(cr_);
  }

  // A dot is a line of no length with a round end: a tenth of the bytes of a circle made of curves. Few go into
  // one path, since cairo's time grows faster than a path.
  void operator()(const Dots& dots) const {
    constexpr std::size_t in_one_path = 500;
    use(cr_, dots.color);
    cairo_save(cr_);
    cairo_set_line_cap(cr_, CAIRO_LINE_CAP_ROUND);
    cairo_set_line_width(cr_, dots.diameter_mm);
    cairo_set_dash(cr_, nullptr, 0, 0.0);
    for (std::size_t i = 0; i < dots.centres.size(); ++i) {
      const Point& c = dots.centres[i];
      cairo_move_to(cr_, c.x, c.y);
      cairo_line_to(cr_, c.x, c.y);
      if ((i + 1) % in_one_path == 0) cairo_stroke(cr_);
    }
    cairo_stroke(cr_);
    cairo_restore(cr_);
  }

  void operator()(const Text& text) const {
    cairo_select_font_face(cr_, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                           text.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(cr_, text.height_mm);
    cairo_text_extents_t extents;
    cairo_text_extents(cr_, text.words.c_str(), &extents);
    const double share = text.align == Align::start ? 0.0 : text.align == Align::middle ? 0.5 : 1.0;
    use(cr_, text.color);
    cairo_save(cr_);
    cairo_translate(cr_, text.at.x, text.at.y);
    if (text.upward) cairo_rotate(cr_, -0.5 * std::numbers::pi);
    cairo_move_to(cr_, -share * extents.x_advance, 0.0);
    cairo_show_text(cr_, text.words.c_str());
    cairo_restore(cr_);
    cairo_new_path(cr_);
  }

  void operator()(const Bitmap& bitmap) const {
    const int stride = cairo_format_stride_for_width(CAIRO_FORMAT_RGB24, bitmap.width);
    const Surface image(cairo_image_surface_create(CAIRO_FORMAT_RGB24, bitmap.width, bitmap.height),
                        &cairo_surface_destroy);
    if (cairo_surface_status(image.get()) != CAIRO_STATUS_SUCCESS) return;
    fill(bitmap, cairo_image_surface_get_data(image.get()), static_cast<std::size_t>(stride));
    cairo_surface_mark_dirty(image.get());
    cairo_save(cr_);
    cairo_translate(cr_, bitmap.box.left, bitmap.box.top);
    cairo_scale(cr_, bitmap.box.width / bitmap.width, bitmap.box.height / bitmap.height);
    cairo_set_source_surface(cr_, image.get(), 0.0, 0.0);
    // Averaged where it is made smaller, sharp where it is made larger; no blur over the edges of the box.
    cairo_pattern_set_filter(cairo_get_source(cr_), CAIRO_FILTER_GOOD);
    cairo_pattern_set_extend(cairo_get_source(cr_), CAIRO_EXTEND_PAD);
    cairo_rectangle(cr_, 0.0, 0.0, bitmap.width, bitmap.height);
    cairo_fill(cr_);
    cairo_restore(cr_);
  }

  void operator()(const ClipBegin& clip) const {
    cairo_save(cr_);
    cairo_rectangle(cr_, clip.box.left, clip.box.top, clip.box.width, clip.box.height);
    cairo_clip(cr_);
  }
  void operator()(const ClipEnd&) const { cairo_restore(cr_); }

 private:
  // cairo keeps a pixel as a number of 32 bits, 0x00RRGGBB.
  static void fill(const Bitmap& bitmap, unsigned char* rows, std::size_t stride) {
    for (int row = 0; row < bitmap.height; ++row) {
      for (int column = 0; column < bitmap.width; ++column) {
        const auto at = static_cast<std::size_t>(row) * static_cast<std::size_t>(bitmap.width);
        const std::uint8_t* const from = &bitmap.pixels[4 * (at + static_cast<std::size_t>(column))];
        const std::uint32_t pixel = (std::uint32_t{from[0]} << 16U) | (std::uint32_t{from[1]} << 8U) | from[2];
        std::memcpy(rows + static_cast<std::size_t>(row) * stride + static_cast<std::size_t>(column) * sizeof pixel,
                    &pixel, sizeof pixel);
      }
    }
  }

  cairo_t* cr_;
};

bool paint(const Drawing& drawing, cairo_surface_t* surface, double units_per_mm) {
  const Context context(cairo_create(surface), &cairo_destroy);
  cairo_t* cr = context.get();
  cairo_scale(cr, units_per_mm, units_per_mm);
  use(cr, {1.0, 1.0, 1.0});
  cairo_paint(cr);
  // Letters keep their shape at every size.
  cairo_font_options_t* font = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(font, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(font, CAIRO_HINT_STYLE_NONE);
  cairo_set_font_options(cr, font);
  cairo_font_options_destroy(font);
  const Painter painter(cr);
  for (const Drawing::Item& item : drawing.items) std::visit(painter, item);
  return cairo_status(cr) == CAIRO_STATUS_SUCCESS;
}

Surface image_of(const Drawing& drawing, double dots_per_inch) {
  const double per_mm = dots_per_inch / mm_per_inch;
  const int width = static_cast<int>(std::lround(drawing.width_mm * per_mm));
  const int height = static_cast<int>(std::lround(drawing.height_mm * per_mm));
  return {cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height), &cairo_surface_destroy};
}

// False where there is too little memory.
bool paint_pixels(const Drawing& drawing, cairo_surface_t* surface, double dots_per_inch) {
  // What it needs while it fills shapes is far less, but cairo ends the program where it does not get that.
  constexpr std::size_t cairo_needs_bytes = std::size_t{32} << 20U;
  return addresses_left(cairo_needs_bytes) && paint(drawing, surface, dots_per_inch / mm_per_inch);
}

}  // namespace

std::string to_svg(const Drawing& drawing) {
  std::string bytes;
  const Surface surface(cairo_svg_surface_create_for_stream(&append, &bytes, drawing.width_mm, drawing.height_mm),
                        &cairo_surface_destroy);
  cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_MM);
  const bool painted = paint(drawing, surface.get(), 1.0);
  cairo_surface_finish(surface.get());
  return painted && cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS ? bytes : std::string();
}

std::string to_pdf(const std::vector<Drawing>& pages) {
  if (pages.empty()) return {};
  constexpr double points_per_mm = 72.0 / mm_per_inch;
  std::string bytes;
  const Surface surface(cairo_pdf_surface_create_for_stream(&append, &bytes, pages.front().width_mm * points_per_mm,
                                                            pages.front().height_mm * points_per_mm),
                        &cairo_surface_destroy);
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, pages.front().title.c_str());
  // No date: the same pages are the same bytes.
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "");
  for (const Drawing& page : pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width_mm * points_per_mm, page.height_mm * points_per_mm);
    if (!paint(page, surface.get(), points_per_mm)) return {};
    cairo_surface_show_page(surface.get());
  }
  cairo_surface_finish(surface.get());
  return cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS ? bytes : std::string();
}

std::string to_png(const Drawing& drawing, double dots_per_inch) {
  const Surface surface = image_of(drawing, dots_per_inch);
  std::string bytes;
  const bool painted = paint_pixels(drawing, surface.get(), dots_per_inch);
  const auto status = cairo_surface_write_to_png_stream(surface.get(), &append, &bytes);
  return painted && status == CAIRO_STATUS_SUCCESS ? bytes : std::string();
}

Bitmap to_pixels(const Drawing& drawing, double dots_per_inch) {
  const Surface surface = image_of(drawing, dots_per_inch);
  if (!paint_pixels(drawing, surface.get(), dots_per_inch)) return {};
  cairo_surface_flush(surface.get());
  Bitmap bitmap;
  bitmap.width = cairo_image_surface_get_width(surface.get());
  bitmap.height = cairo_image_surface_get_height(surface.get());
  const unsigned char* rows = cairo_image_surface_get_data(surface.get());
  const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface.get()));
  for (int row = 0; row < bitmap.height; ++row) {
    for (int column = 0; column < bitmap.width; ++column) {
      std::uint32_t pixel = 0;
      const std::size_t at =
          static_cast<std::size_t>(row) * stride + static_cast<std::size_t>(column) * sizeof pixel;
      std::memcpy(&pixel, rows + at, sizeof pixel);
      for (const unsigned shift : {16U, 8U, 0U}) {
        bitmap.pixels.push_back(static_cast<std::uint8_t>((pixel >> shift) & 0xFFU));
      }
      bitmap.pixels.push_back(255);
    }
  }
  return bitmap;
}

}  // namespace laywright
