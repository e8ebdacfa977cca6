#include "paper/drafting.h"

#include <cmath>

#include <fmt/format.h>

#include "base/round_figure.h"
#include "figures/figures.h"

namespace laywright {
namespace {

const Pen thin{ink, 0.15, {}};

void draw_arrow_head(Drawing& drawing, Point tip, Point towards) {
  constexpr double length = 1.8, half_width = 0.4;
  const double size = std::hypot(towards.x - tip.x, towards.y - tip.y);
  const double ux = (towards.x - tip.x) / size, uy = (towards.y - tip.y) / size;
  const Point base{tip.x + length * ux, tip.y + length * uy};
  drawing.add(Shape{{tip,
                     {base.x - half_width * uy, base.y + half_width * ux},
                     {base.x + half_width * uy, base.y - half_width * ux}},
                    true,
                    ink,
                    {}});
}

// DejaVu-like sans: a generous mean width of digits and letters, as a share of their height.
double guessed_width(const std::string& words, double height) {
  return 0.62 * height * static_cast<double>(words.size());
}

}  // namespace

void draw_line(Drawing& drawing, Point from, Point to, const Pen& pen) {
  drawing.add(Shape{{from, to}, false, {}, pen});
}

void draw_box(Drawing& drawing, const Box& box, std::optional<Color> fill, std::optional<Pen> pen) {
  drawing.add(
      Shape{{{box.left, box.top}, {box.right(), box.top}, {box.right(), box.bottom()}, {box.left, box.bottom()}},
            true,
            fill,
            std::move(pen)});
}

void draw_hatch(Drawing& drawing, const Box& box, double gap_mm, const Pen& pen) {
  const double step = gap_mm * std::sqrt(2.0);
  for (double x = box.left - box.height; x < box.right(); x += step) {
    draw_line(drawing, {x, box.bottom()}, {x + box.height, box.top}, pen);
  }
}

void draw_dimension(Drawing& drawing, Point a, Point b, const std::string& words) {
  constexpr double text_height = 2.8;
  const bool upright = std::abs(b.y - a.y) > std::abs(b.x - a.x);
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const double ux = (b.x - a.x) / length, uy = (b.y - a.y) / length;
  const double patch = guessed_width(words, text_height) + 1.0;
  const bool roomy = length > patch + 4.0;
  if (roomy) {
    draw_line(drawing, a, b, thin);
    draw_arrow_head(drawing, a, b);
    draw_arrow_head(drawing, b, a);
  } else {
    draw_line(drawing, {a.x - 4.0 * ux, a.y - 4.0 * uy}, {b.x + 4.0 * ux, b.y + 4.0 * uy}, thin);
    draw_arrow_head(drawing, a, {a.x - ux, a.y - uy});
    draw_arrow_head(drawing, b, {b.x + ux, b.y + uy});
  }
  // On the line, or, where that would cover it, beside it.
  const double lift = roomy ? 0.36 * text_height : -0.8;
  const Point middle{0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
  const Point base = upright ? Point{middle.x + lift, middle.y} : Point{middle.x, middle.y + lift};
  if (roomy) {
    const double across = upright ? text_height : patch, along = upright ? patch : text_height;
    draw_box(drawing, {middle.x - 0.5 * across, middle.y - 0.5 * along, across, along}, paper, {});
  }
  drawing.add(Text{base, words, text_height, Align::middle, false, upright, ink});
}

void draw_scale_bar(Drawing& drawing, Point at, double most_mm, double scale) {
  const double length = round_figure_below(most_mm / scale);
  const double page = length * scale;
  draw_box(drawing, {at.x, at.y, 0.5 * page, 1.2}, ink, thin);
  draw_box(drawing, {at.x + 0.5 * page, at.y, 0.5 * page, 1.2}, paper, thin);
  drawing.add(Text{{at.x + page + 1.5, at.y + 1.5}, setting(length) + " mm", 2.8, Align::start, false, false, ink});
}

std::vector<double> ruler_ticks(const Ruler& ruler) {
  const double step = round_figure_below(24.0 / (ruler.length_mm / (ruler.to - ruler.from)));
  std::vector<double> ticks;
  // A little beyond the end, so that rounding does not lose the last tick.
  for (double n = std::ceil(ruler.from / step - 1e-9); n * step <= ruler.to + 1e-9 * step; ++n)
    ticks.push_back(n * step);
  return ticks;
}

void draw_ruler(Drawing& drawing, const Ruler& ruler) {
  constexpr double tick = 1.2, text_height = 2.6;
  const double scale = ruler.length_mm / (ruler.to - ruler.from);
  const auto point = [&](double value, double away) -> Point {
    const double along = (value - ruler.from) * scale;
    return ruler.upright ? Point{ruler.at.x - away, ruler.at.y - along}
                         : Point{ruler.at.x + along, ruler.at.y + away};
  };
  draw_line(drawing, point(ruler.from, 0.0), point(ruler.to, 0.0), thin);
  for (const double value : ruler_ticks(ruler)) {
    draw_line(drawing, point(value, 0.0), point(value, tick), thin);
    const Point at = point(value, tick + 0.6);
    const Align align = ruler.upright ? Align::end : Align::middle;
    const double drop = ruler.upright ? 0.36 * text_height : 0.8 * text_height;
    drawing.add(Text{{at.x, at.y + drop}, setting(value), text_height, align, false, false, ink});
  }
  const Point words = point(0.5 * (ruler.from + ruler.to), ruler.upright ? 10.5 : 6.8);
  drawing.add(Text{words, ruler.words, text_height, Align::middle, false, ruler.upright, faint_ink});
}

}  // namespace laywright
