#include "render/canvas.h"

#include <cairo.h>

#include <new>
#include <numbers>

namespace laywright {

struct Canvas::Surface {
  cairo_surface_t* image;
  cairo_t* pen;

  Surface(int width, int height)
      : image(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, height)), pen(cairo_create(image)) {
    cairo_set_line_cap(pen, CAIRO_LINE_CAP_ROUND);
    cairo_set_line_join(pen, CAIRO_LINE_JOIN_ROUND);
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_SLIGHT);
    cairo_set_font_options(pen, options);
    cairo_font_options_destroy(options);
  }
  ~Surface() {
    cairo_destroy(pen);
    cairo_surface_destroy(image);
  }
  Surface(const Surface&) = delete;
  Surface& operator=(const Surface&) = delete;

  void use(const Ink& ink) const {
    cairo_set_source_rgba(pen, static_cast<double>(ink.color.r), static_cast<double>(ink.color.g),
                          static_cast<double>(ink.color.b), ink.opacity);
  }
  void trace(const std::vector<glm::dvec2>& points) const {
    cairo_new_path(pen);
    for (const glm::dvec2& point : points) cairo_line_to(pen, point.x, point.y);
  }
  void trace_box(glm::dvec2 corner, glm::dvec2 size, double rounding) const {
    const double quarter = std::numbers::pi / 2;
    const glm::dvec2 low = corner + rounding, high = corner + size - rounding;
    cairo_new_path(pen);
    cairo_arc(pen, high.x, low.y, rounding, -quarter, 0);
    cairo_arc(pen, high.x, high.y, rounding, 0, quarter);
    cairo_arc(pen, low.x, high.y, rounding, quarter, 2 * quarter);
    cairo_arc(pen, low.x, low.y, rounding, 2 * quarter, 3 * quarter);
    cairo_close_path(pen);
  }
  void choose_font(double size, bool bold) const {
    cairo_select_font_face(pen, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                           bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(pen, size);
  }
};

Canvas::Canvas(int width, int height) : surface_(std::make_unique<Surface>(width, height)) {
  if (cairo_status(surface_->pen) != CAIRO_STATUS_SUCCESS) throw std::bad_alloc();
}
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;
Canvas::~Canvas() = default;

void Canvas::clear() {
  cairo_save(surface_->pen);
  cairo_set_operator(surface_->pen, CAIRO_OPERATOR_CLEAR);
  cairo_paint(surface_->pen);
  cairo_restore(surface_->pen);
}

int Canvas::width() const { return cairo_image_surface_get_width(surface_->image); }
int Canvas::height() const { return cairo_image_surface_get_height(surface_->image); }

void Canvas::line(const std::vector<glm::dvec2>& points, const Ink& ink, double width, bool dashed) {
  surface_->use(ink);
  cairo_set_line_width(surface_->pen, width);
  const double dashes[] = {4 * width, 3 * width};
  cairo_set_dash(surface_->pen, dashes, dashed ? 2 : 0, 0);
  surface_->trace(points);
  cairo_stroke(surface_->pen);
  cairo_set_dash(surface_->pen, nullptr, 0, 0);
}

void Canvas::fill(const std::vector<glm::dvec2>& points, const Ink& ink) {
  surface_->use(ink);
  surface_->trace(points);
  cairo_close_path(surface_->pen);
  cairo_fill(surface_->pen);
}

void Canvas::ring(glm::dvec2 centre, double radius, const Ink& ink, double width) {
  surface_->use(ink);
  cairo_set_line_width(surface_->pen, width);
  cairo_new_path(surface_->pen);
  cairo_arc(surface_->pen, centre.x, centre.y, radius, 0, 2 * std::numbers::pi);
  cairo_stroke(surface_->pen);
}

void Canvas::box(glm::dvec2 corner, glm::dvec2 size, double rounding, const Ink& ink) {
  surface_->use(ink);
  surface_->trace_box(corner, size, rounding);
  cairo_fill(surface_->pen);
}

void Canvas::frame(glm::dvec2 corner, glm::dvec2 size, double rounding, const Ink& ink, double width) {
  surface_->use(ink);
  cairo_set_line_width(surface_->pen, width);
  surface_->trace_box(corner, size, rounding);
  cairo_stroke(surface_->pen);
}

void Canvas::text(glm::dvec2 at, const std::string& words, double size, const Ink& ink, TextAlign align, bool bold) {
  const double width = align == TextAlign::start ? 0.0 : text_width(words, size, bold);
  const double shift = align == TextAlign::middle ? width / 2 : width;
  surface_->choose_font(size, bold);
  surface_->use(ink);
  cairo_move_to(surface_->pen, align == TextAlign::start ? at.x : at.x - shift, at.y);
  cairo_show_text(surface_->pen, words.c_str());
}

void Canvas::text_upward(glm::dvec2 at, const std::string& words, double size, const Ink& ink) {
  const double width = text_width(words, size);
  surface_->choose_font(size, false);
  surface_->use(ink);
  cairo_save(surface_->pen);
  cairo_translate(surface_->pen, at.x, at.y);
  cairo_rotate(surface_->pen, -std::numbers::pi / 2);
  cairo_move_to(surface_->pen, -width / 2, 0.0);
  cairo_show_text(surface_->pen, words.c_str());
  cairo_restore(surface_->pen);
}

double Canvas::text_width(const std::string& words, double size, bool bold) const {
  surface_->choose_font(size, bold);
  cairo_text_extents_t extents;
  cairo_text_extents(surface_->pen, words.c_str(), &extents);
  return extents.x_advance;
}

const unsigned char* Canvas::data() const {
  cairo_surface_flush(surface_->image);
  return cairo_image_surface_get_data(surface_->image);
}

}  // namespace laywright
