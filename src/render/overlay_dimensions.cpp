#include <algorithm>
#include <cmath>
#include <optional>

#include "render/overlay_parts.h"

namespace laywright {
namespace {

void draw_arrow(Canvas& canvas, glm::dvec2 tip, glm::dvec2 onward, const OverlayStyle& style) {
  const double length = 9.0 * style.unit, half = 2.8 * style.unit;
  const glm::dvec2 side(-onward.y, onward.x), foot = tip - onward * length;
  canvas.fill({tip, foot + side * half, foot - side * half}, style.ink);
}

// The silhouette of the spool on the screen.
struct Outline {
  glm::dvec2 low{1e300}, high{-1e300};

  void add(const Mesh& mesh, const View& view) {
    for (const MeshVertex& vertex : mesh.vertices)
      if (const auto at = in_picture(view, Vec3(vertex.x, vertex.y, vertex.z))) {
        low = glm::min(low, *at);
        high = glm::max(high, *at);
      }
  }
};

Outline outline_of(const Scene& scene, const View& view) {
  Outline outline;
  outline.add(scene.spool.left_flange, view);
  outline.add(scene.spool.right_flange, view);
  outline.add(scene.spool.barrel, view);
  return outline;
}

// How many lines stand on each side of the spool already.
struct Sides {
  int left = 0, right = 0, above = 0;
};

// A line that would cross the spool is moved clear of it, straight across its own direction as far as the screen goes:
// upright ones to the side that they are nearer to, others upward.
glm::dvec2 clear_of(const Outline& outline, glm::dvec2 from, glm::dvec2 to, Sides& sides,
                    const OverlayStyle& style) {
  const double gap = 30.0 * style.unit, step = 44.0 * style.unit;
  const glm::dvec2 run = glm::abs(to - from);
  if (run.y > run.x) {
    const double middle = (outline.low.x + outline.high.x) / 2;
    if ((from.x + to.x) / 2 < middle)
      return {outline.low.x - gap - step * sides.left++ - std::max(from.x, to.x), 0.0};
    return {outline.high.x + gap + step * sides.right++ - std::min(from.x, to.x), 0.0};
  }
  return {0.0, outline.low.y - gap - step * sides.above++ - std::max(from.y, to.y)};
}

void draw_one(Canvas& canvas, const DimensionLine& line, const View& view, const Outline& outline, Sides& sides,
              const OverlayStyle& style) {
  const auto first = in_picture(view, line.from), second = in_picture(view, line.to);
  const auto measured_from = in_picture(view, line.measured_from), measured_to = in_picture(view, line.measured_to);
  if (!first || !second || !measured_from || !measured_to) return;
  const double length = glm::length(*second - *first);
  // Seen from its end it says nothing.
  if (length < 24.0 * style.unit) return;
  const glm::dvec2 shift = clear_of(outline, *first, *second, sides, style);
  const glm::dvec2 from = *first + shift, to = *second + shift;
  const glm::dvec2 onward = (to - from) / length;
  canvas.line({*measured_from, from}, style.faint, 0.8 * style.unit);
  canvas.line({*measured_to, to}, style.faint, 0.8 * style.unit);
  canvas.line({from, to}, style.ink, 1.2 * style.unit);
  draw_arrow(canvas, from, -onward, style);
  draw_arrow(canvas, to, onward, style);
  const glm::dvec2 middle = (from + to) / 2.0;
  const double width = canvas.text_width(line.text, style.letters()), pad = 5.0 * style.unit;
  const double height = style.letters() + 2.0 * style.unit;
  canvas.box(middle - glm::dvec2(width / 2 + pad, height / 2 + pad / 2), {width + 2 * pad, height + pad},
             3.0 * style.unit, {style.ground.color, 0.9});
  canvas.text({middle.x, middle.y + 0.35 * style.letters()}, line.text, style.letters(), style.ink,
              TextAlign::middle);
}

}  // namespace

void draw_dimension_lines(Canvas& canvas, const Scene& scene, const View& view, const OverlayStyle& style) {
  if (scene.dimensions.empty()) return;
  const Outline outline = outline_of(scene, view);
  Sides sides;
  for (const DimensionLine& line : scene.dimensions) draw_one(canvas, line, view, outline, sides, style);
}

}  // namespace laywright
