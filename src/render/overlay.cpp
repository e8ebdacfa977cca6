#include "render/overlay.h"

#include <algorithm>

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

void draw_caption(Canvas& canvas, const OverlaySettings& settings, const OverlayStyle& style) {
  const double x = style.margin();
  double y = style.margin() + 14.0 * style.unit;
  const double width = std::max(canvas.text_width(settings.title, 18.0 * style.unit, true),
                                canvas.text_width(settings.subtitle, style.letters()));
  if (width <= 0.0) return;
  const double pad = 10.0 * style.unit;
  canvas.box({x - pad, style.margin() - pad}, {width + 2 * pad, 38.0 * style.unit + 2 * pad}, 6.0 * style.unit,
             {style.ground.color, 0.82});
  if (!settings.title.empty())
    canvas.text({x, y}, settings.title, 18.0 * style.unit, style.ink, TextAlign::start, true);
  y += 20.0 * style.unit;
  if (!settings.subtitle.empty()) canvas.text({x, y}, settings.subtitle, style.letters(), style.faint);
}

}  // namespace

void draw_overlay(Canvas& canvas, const Scene& scene, const View& view, const OverlaySettings& settings) {
  const OverlayStyle style = style_of(scene, view, settings);
  draw_signs(canvas, scene, view, style);
  draw_dimension_lines(canvas, scene, view, style);
  if (settings.legend) draw_legend(canvas, scene, style);
  if (settings.scale_bar) draw_scale(canvas, make_scale_bar(view), style);
  draw_caption(canvas, settings, style);
}

}  // namespace laywright
