#include <algorithm>
#include <cmath>
#include <optional>

#include "render/overlay_parts.h"
#include "render/overlay_shade.h"

namespace laywright {
namespace {

void draw_arrow(Canvas& canvas, glm::dvec2 tip, glm::dvec2 onward, const OverlayStyle& style) {
  const double length = 9.0 * style.unit, half = 2.8 * style.unit;
  const glm::dvec2 side(-onward.y, onward.x), foot = tip - onward * length;
  canvas.fill({tip, foot + side * half, foot - side * half}, style.ink);
}

// How many lines stand on each side of the spool already.
struct Sides {
  int left = 0, right = 0, above = 0;
};

// How high words around x may stand: below the picture's edge, and below the caption where they would meet it.
double highest(double x, double half_width, const OverlayStyle& style) {
  const double edge = 12.0 * style.unit;
  return x - half_width < style.caption.x + edge ? std::max(edge, style.caption.y + edge) : edge;
}

// A line that would cross the spool is moved clear of it, straight across its own direction as far as the screen goes,
// but not out of the picture: upright ones to the side that they are nearer to, others upward.
glm::dvec2 clear_of(const SpoolShade& shade, glm::dvec2 from, glm::dvec2 to, const Canvas& canvas,
                    double words_width, Sides& sides, const OverlayStyle& style) {
  const double gap = 22.0 * style.unit, step = 30.0 * style.unit, edge = 12.0 * style.unit;
  const glm::dvec2 run = glm::abs(to - from);
  if (run.y > run.x) {
    const double middle = (shade.low().x + shade.high().x) / 2;
    if ((from.x + to.x) / 2 < middle) {
      const double x = std::max(shade.low().x - gap - step * sides.left++, edge);
      return {x - std::max(from.x, to.x), 0.0};
    }
    const double x = std::min(shade.high().x + gap + step * sides.right++, canvas.width() - edge);
    return {x - std::min(from.x, to.x), 0.0};
  }
  const double top = highest((from.x + to.x) / 2.0, words_width / 2.0, style);
  const double y = std::max(shade.low().y - gap - step * sides.above++, top);
  return {0.0, y - std::max(from.y, to.y)};
}

// Words on a patch of ground, level or upward, kept within the picture.
void draw_words(Canvas& canvas, const std::string& words, glm::dvec2 middle, bool upward,
                const OverlayStyle& style) {
  const double pad = 4.0 * style.unit;
  const double along = canvas.text_width(words, style.letters()) + 2 * pad, high = style.letters() + 2 * pad;
  const glm::dvec2 size = upward ? glm::dvec2(high, along) : glm::dvec2(along, high);
  const glm::dvec2 picture(canvas.width(), canvas.height()), room = size / 2.0 + 2.0;
  middle = glm::max(room, glm::min(middle, picture - room));
  canvas.box(middle - size / 2.0, size, 3.0 * style.unit, {style.ground.color, 0.9});
  const double down = 0.36 * style.letters();
  if (upward)
    canvas.text_upward({middle.x + down, middle.y}, words, style.letters(), style.ink);
  else
    canvas.text({middle.x, middle.y + down}, words, style.letters(), style.ink, TextAlign::middle);
}

void draw_between(Canvas& canvas, const DimensionLine& line, const View& view, const SpoolShade& shade, Sides& sides,
                  const OverlayStyle& style) {
  const auto first = in_picture(view, line.from), second = in_picture(view, line.to);
  const auto measured_from = in_picture(view, line.measured_from), measured_to = in_picture(view, line.measured_to);
  if (!first || !second || !measured_from || !measured_to) return;
  const double length = glm::length(*second - *first);
  // Seen from its end it says nothing.
  if (length < 24.0 * style.unit) return;
  const double words_width = canvas.text_width(line.text, style.letters());
  const glm::dvec2 shift = clear_of(shade, *first, *second, canvas, words_width, sides, style);
  const glm::dvec2 from = *first + shift, to = *second + shift;
  const glm::dvec2 onward = (to - from) / length;
  canvas.line({*measured_from, from}, style.faint, 0.8 * style.unit);
  canvas.line({*measured_to, to}, style.faint, 0.8 * style.unit);
  canvas.line({from, to}, style.ink, 1.2 * style.unit);
  draw_arrow(canvas, from, -onward, style);
  draw_arrow(canvas, to, onward, style);
  // Along its line, as on a drawing, where that is longer than the words; so no margin must be as wide as they are.
  draw_words(canvas, line.text, (from + to) / 2.0, std::abs(onward.y) > std::abs(onward.x), style);
}

// An arrow onto a surface, and the words above or below the spool.
void draw_pointed(Canvas& canvas, const DimensionLine& line, const View& view, const SpoolShade& shade, Sides& sides,
                  const OverlayStyle& style) {
  const bool from_above = view.camera.elevation_deg >= 0.0;
  const auto tip = in_picture(view, from_above ? line.measured_from : line.measured_to);
  const auto outside = in_picture(view, from_above ? line.from : line.to);
  if (!tip || !outside) return;
  const bool above = outside->y <= tip->y;
  const double gap = 22.0 * style.unit, step = 30.0 * style.unit;
  const double half_width = canvas.text_width(line.text, style.letters()) / 2.0;
  double y = above ? shade.low().y - gap - step * sides.above++ : shade.high().y + gap;
  y = std::clamp(y, highest(tip->x, half_width, style), std::max(1.0, canvas.height() - 12.0 * style.unit));
  const glm::dvec2 foot(tip->x, y);
  const double length = glm::length(*tip - foot);
  if (length < 24.0 * style.unit) return;
  canvas.line({foot, *tip}, {style.ground.color, 0.7}, 3.0 * style.unit);
  canvas.line({foot, *tip}, style.ink, 1.2 * style.unit);
  draw_arrow(canvas, *tip, (*tip - foot) / length, style);
  draw_words(canvas, line.text, foot, false, style);
}

}  // namespace

void draw_dimension_lines(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style) {
  if (scene.dimensions.empty()) return;
  const SpoolShade shade(scene, view);
  Sides sides;
  for (const DimensionLine& line : scene.dimensions) {
    line.pointed ? draw_pointed(canvas, line, view, shade, sides, style)
                 : draw_between(canvas, line, view, shade, sides, style);
  }
}

}  // namespace laywright
