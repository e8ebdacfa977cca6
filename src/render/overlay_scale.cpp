#include <algorithm>

#include "render/overlay_parts.h"

namespace laywright {

OverlayBox scale_box(const Canvas& canvas, const ScaleBar& bar, const OverlayRoom& taken,
                     const OverlayStyle& style) {
  if (bar.length_px <= 0.0) return {};
  const double u = style.unit, pad = 10 * u;
  const glm::dvec2 size(bar.length_px + 2 * pad, 38 * u);
  const double near = style.margin() - pad, y = canvas.height() - style.margin() - 29 * u;
  const OverlayBox right{{canvas.width() - near - size.x, y}, size}, left{{near, y}, size};
  const auto is_free = [&](const OverlayBox& box) {
    return !taken.is_crossed(box) && std::none_of(taken.words.begin(), taken.words.end(),
                                                  [&](const OverlayBox& words) { return overlap(words, box); });
  };
  return !is_free(right) && is_free(left) ? left : right;
}

void draw_scale(Canvas& canvas, const ScaleBar& bar, const OverlayBox& box, const OverlayStyle& style) {
  if (box.size.x <= 0.0) return;
  const double u = style.unit, left = box.corner.x + 10 * u, right = left + bar.length_px, y = box.corner.y + 26 * u;
  canvas.box(box.corner, box.size, 6 * u, {style.ground.color, 0.82});
  canvas.line({{left, y}, {right, y}}, style.ink, 2 * u);
  for (const double end : {left, right}) canvas.line({{end, y - 5 * u}, {end, y + 5 * u}}, style.ink, 2 * u);
  canvas.text({(left + right) / 2, y - 9 * u}, bar.text, style.letters(), style.ink, TextAlign::middle);
}

}  // namespace laywright
