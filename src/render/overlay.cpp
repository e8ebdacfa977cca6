#include "render/overlay.h"

#include <algorithm>

#include "base/readable.h"
#include "render/overlay_fiber.h"
#include "render/overlay_parts.h"

namespace laywright {
namespace {

OverlayStyle style_of(const Scene& scene, const View& view, const OverlaySettings& settings) {
  const ThemeColours colours = theme_colours(scene.theme);
  OverlayStyle style;
  const double suited = std::min(view.width_px / 1280.0, view.height_px / 720.0);
  style.unit = settings.text_scale > 0.0 ? settings.text_scale : std::max(suited, 0.55);
  style.ink = ink_of(colours.ink);
  style.faint = ink_of(colours.faint_ink);
  style.ground = ink_of(colours.ground_top);
  return style;
}

struct Caption {
  glm::dvec2 corner{0.0}, size{0.0};  // no size where there is none
};
// In the first corner that no free fiber comes to: the upper left before all others, those over the scale bar at last.
Caption caption_of(const Canvas& canvas, const OverlaySettings& settings, const OverlayStyle& style,
                   const OverlayRoom& taken) {
  const double width = std::max(canvas.text_width(settings.title, 18.0 * style.unit, true),
                                canvas.text_width(settings.subtitle, style.letters()));
  if (width <= 0.0) return {};
  const double pad = 10.0 * style.unit;
  const glm::dvec2 size(width + 2 * pad, 38.0 * style.unit + 2 * pad), near(style.margin() - pad);
  const glm::dvec2 far = glm::dvec2(canvas.width(), canvas.height()) - near - size;
  const double over_bar = far.y - style.scale_height();
  for (const glm::dvec2 corner : {near, {near.x, far.y}, {far.x, near.y}, {far.x, over_bar}, {near.x, over_bar}})
    if (!taken.is_crossed({corner, size})) return {corner, size};
  return {near, size};
}

void draw_caption(Canvas& canvas, const Caption& caption, const OverlaySettings& settings,
                  const OverlayStyle& style) {
  if (caption.size.x <= 0.0) return;
  const double pad = 10.0 * style.unit, x = caption.corner.x + pad, y = caption.corner.y + pad + 14.0 * style.unit;
  canvas.box(caption.corner, caption.size, 6.0 * style.unit, {style.ground.color, 0.82});
  canvas.text({x, y}, settings.title, 18.0 * style.unit, style.ink, TextAlign::start, true);
  canvas.text({x, y + 20.0 * style.unit}, settings.subtitle, style.letters(), style.faint);
}

}  // namespace

void draw_overlay(Canvas& canvas, const Scene& scene, const View& view, const OverlaySettings& given) {
  OverlayStyle style = style_of(scene, view, given);
  OverlaySettings settings = given;
  const double room = canvas.width() - 2.0 * style.margin();
  settings.title = shortened(visible(given.title), [&](const std::string& words) {
    return canvas.text_width(words, 18.0 * style.unit, true) <= room;
  });
  OverlayRoom taken;
  taken.fibers = free_fibers(view, settings.guides);
  const Caption caption = caption_of(canvas, settings, style, taken);
  // Rows of dimensions stand below it where it is above.
  if (caption.corner.y <= style.margin()) style.caption = caption.corner + caption.size;
  if (scene.explained) draw_lay_point(canvas, scene, view, style);
  const bool tells = settings.legend && view.legend;
  if (tells) draw_layer_numbers(canvas, scene, view, style);
  if (caption.size.x > 0.0) taken.words.push_back({caption.corner, caption.size});
  draw_signs(canvas, scene, view, style, taken);
  const SpoolShade shade(scene, view);
  draw_dimension_lines(canvas, scene, view, shade, style, taken);
  if (tells && scene.explained) draw_zero(canvas, scene, view, style, taken);
  const double foot = settings.scale_bar ? style.margin() + style.scale_height() : style.margin();
  const ScaleBar bar = settings.scale_bar ? make_scale_bar(view) : ScaleBar{};
  const OverlayBox scale = scale_box(canvas, bar, taken, style);
  if (scale.corner.x < canvas.width() / 2.0) taken.words.push_back(scale);
  if (tells) draw_legend(canvas, scene, shade, taken, foot, style);
  draw_scale(canvas, bar, scale, style);
  draw_caption(canvas, caption, settings, style);
}

}  // namespace laywright
