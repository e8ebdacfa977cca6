// render/canvas.h in a browser: draws onto the page's own canvas that lies over the picture (Module.overlay). A new
// Canvas wipes it. The pixels stay with the browser: there is no data().
#include "render/canvas.h"

#include <emscripten.h>

namespace laywright {
namespace {

// clang-format off
EM_JS(void, overlay_begin, (int width, int height), {
  const canvas = Module.overlay;
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  const pen = Module.pen = canvas.getContext('2d');
  pen.clearRect(0, 0, width, height);
  pen.lineCap = pen.lineJoin = 'round';
})
EM_JS(void, overlay_ink, (double r, double g, double b, double opacity), {
  const pen = Module.pen;
  pen.fillStyle = pen.strokeStyle = `rgba(${255 * r},${255 * g},${255 * b},${opacity})`;
})
EM_JS(void, overlay_trace, (const double* points, int count), {
  const pen = Module.pen, at = points >> 3;
  pen.beginPath();
  for (let i = 0; i < count; ++i) pen.lineTo(HEAPF64[at + 2 * i], HEAPF64[at + 2 * i + 1]);
})
EM_JS(void, overlay_arc, (double x, double y, double radius), {
  Module.pen.beginPath();
  Module.pen.arc(x, y, radius, 0, 2 * Math.PI);
})
EM_JS(void, overlay_box, (double x, double y, double width, double height, double rounding), {
  const pen = Module.pen, r = Math.min(rounding, width / 2, height / 2);
  pen.beginPath();
  pen.moveTo(x + r, y);
  pen.arcTo(x + width, y, x + width, y + height, r);
  pen.arcTo(x + width, y + height, x, y + height, r);
  pen.arcTo(x, y + height, x, y, r);
  pen.arcTo(x, y, x + width, y, r);
  pen.closePath();
})
EM_JS(void, overlay_stroke, (double width, int dashed), {
  const pen = Module.pen;
  pen.lineWidth = width;
  pen.setLineDash(dashed ? [4 * width, 3 * width] : []);
  pen.stroke();
})
EM_JS(void, overlay_fill, (), { Module.pen.fill(); })
EM_JS(void, overlay_font, (double size, int bold), {
  Module.pen.font = `${bold ? 600 : 400} ${size}px system-ui, sans-serif`;
})
EM_JS(void, overlay_text, (double x, double y, const char* words, int align), {
  Module.pen.textAlign = ['left', 'center', 'right'][align];
  Module.pen.fillText(UTF8ToString(words), x, y);
})
EM_JS(void, overlay_text_upward, (double x, double y, const char* words), {
  const pen = Module.pen;
  pen.save();
  pen.translate(x, y);
  pen.rotate(-Math.PI / 2);
  pen.textAlign = 'center';
  pen.fillText(UTF8ToString(words), 0, 0);
  pen.restore();
})
EM_JS(double, overlay_text_width, (const char* words), { return Module.pen.measureText(UTF8ToString(words)).width; })
// clang-format on

void use(const Ink& ink) {
  overlay_ink(static_cast<double>(ink.color.r), static_cast<double>(ink.color.g), static_cast<double>(ink.color.b),
              ink.opacity);
}

void trace(const std::vector<glm::dvec2>& points) {
  static_assert(sizeof(glm::dvec2) == 2 * sizeof(double));
  if (!points.empty()) overlay_trace(&points.front().x, static_cast<int>(points.size()));
}

}  // namespace

struct Canvas::Surface {
  int width, height;
};

Canvas::Canvas(int width, int height) : surface_(std::make_unique<Surface>(Surface{width, height})) {
  overlay_begin(width, height);
}
Canvas::Canvas(Canvas&&) noexcept = default;
Canvas& Canvas::operator=(Canvas&&) noexcept = default;
Canvas::~Canvas() = default;

int Canvas::width() const { return surface_->width; }
int Canvas::height() const { return surface_->height; }

void Canvas::clear() { overlay_begin(surface_->width, surface_->height); }

void Canvas::line(const std::vector<glm::dvec2>& points, const Ink& ink, double width, bool dashed) {
  use(ink);
  trace(points);
  overlay_stroke(width, dashed ? 1 : 0);
}

void Canvas::fill(const std::vector<glm::dvec2>& points, const Ink& ink) {
  use(ink);
  trace(points);
  overlay_fill();
}

void Canvas::ring(glm::dvec2 centre, double radius, const Ink& ink, double width) {
  use(ink);
  overlay_arc(centre.x, centre.y, radius);
  overlay_stroke(width, 0);
}

void Canvas::box(glm::dvec2 corner, glm::dvec2 size, double rounding, const Ink& ink) {
  use(ink);
  overlay_box(corner.x, corner.y, size.x, size.y, rounding);
  overlay_fill();
}

void Canvas::frame(glm::dvec2 corner, glm::dvec2 size, double rounding, const Ink& ink, double width) {
  use(ink);
  overlay_box(corner.x, corner.y, size.x, size.y, rounding);
  overlay_stroke(width, 0);
}

void Canvas::text(glm::dvec2 at, const std::string& words, double size, const Ink& ink, TextAlign align, bool bold) {
  use(ink);
  overlay_font(size, bold ? 1 : 0);
  overlay_text(at.x, at.y, words.c_str(), static_cast<int>(align));
}

void Canvas::text_upward(glm::dvec2 at, const std::string& words, double size, const Ink& ink) {
  use(ink);
  overlay_font(size, 0);
  overlay_text_upward(at.x, at.y, words.c_str());
}

double Canvas::text_width(const std::string& words, double size, bool bold) const {
  overlay_font(size, bold ? 1 : 0);
  return overlay_text_width(words.c_str());
}

}  // namespace laywright
