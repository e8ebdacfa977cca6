#include "paper/curve_chart.h"

#include <algorithm>
#include <cmath>

#include "base/round_figure.h"
#include "figures/figures.h"
#include "paper/drafting.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr double tick_type = 2.5;
const Pen frame_pen{ink, 0.2, {}};
const Pen grid_pen{{0.75, 0.75, 0.78}, 0.1, {}};

struct Scale {
  double from = 0.0, to = 1.0, step = 1.0;
};

// A range around the values with ticks of round steps, about `ticks` of them.
Scale scale_over(double least, double greatest, double ticks, bool roomy) {
  double span = greatest - least;
  if (span <= 1e-9 * std::abs(greatest)) span = greatest == 0.0 ? 1.0 : 0.2 * std::abs(greatest);
  const double middle = 0.5 * (least + greatest), half = 0.5 * span * (roomy ? 1.42 : 1.0);
  return {middle - half, middle + half, round_figure_above(2.0 * half / ticks)};
}

}  // namespace

void draw_curve_chart(Drawing& drawing, const Box& box, const CurveChart& chart) {
  put(drawing, {box.left, box.top + 2.8}, chart.title, {2.8, true, Align::start, ink});
  const Box area{box.left + 11.0, box.top + 5.0, box.width - 14.5, box.height - 13.0};
  draw_box(drawing, area, {}, frame_pen);
  if (chart.y.size() < 2) {
    const Type type{2.5, false, Align::start, faint_ink};
    put_lines(drawing, {area.left + 2.0, area.top + 5.0}, lines_of(chart.instead, area.width - 4.0, type), type);
    return;
  }
  const auto [least, greatest] = std::minmax_element(chart.y.begin(), chart.y.end());
  const Scale across = scale_over(chart.x.front(), chart.x.back(), 4.0, false);
  const Scale up = scale_over(*least, *greatest, 5.0, true);
  const auto at = [&](double x, double y) {
    return Point{area.left + area.width * (x - across.from) / (across.to - across.from),
                 area.bottom() - area.height * (y - up.from) / (up.to - up.from)};
  };
  for (double n = std::ceil(up.from / up.step - 1e-9); n * up.step <= up.to + 1e-9 * up.step; ++n) {
    const Point left = at(across.from, n * up.step);
    draw_line(drawing, left, {area.right(), left.y}, grid_pen);
    put_within(drawing, {area.left - 0.8, left.y + 0.36 * tick_type}, 10.0, setting(n * up.step),
               {tick_type, false, Align::end, ink});
  }
  for (double n = std::ceil(across.from / across.step - 1e-9); n * across.step <= across.to * (1.0 + 1e-9); ++n) {
    const Point foot = at(n * across.step, up.from);
    draw_line(drawing, foot, {foot.x, foot.y + 0.9}, frame_pen);
    put(drawing, {foot.x, foot.y + 3.3}, setting(n * across.step), {tick_type, false, Align::middle, ink});
  }
  put(drawing, {area.left + 0.5 * area.width, area.bottom() + 6.6}, chart.x_words,
      {tick_type, false, Align::middle, faint_ink});

  Shape curve{{}, false, {}, Pen{ink, 0.35, {}}};
  for (std::size_t i = 0; i < chart.x.size(); ++i) curve.points.push_back(at(chart.x[i], chart.y[i]));
  drawing.add(std::move(curve));
  // The words stand beside the curve's ends, where it is not: it leaves one end upward, so there is room below, and so
  // on.
  const bool rises = chart.y.back() >= chart.y.front();
  constexpr double over = -1.0, under = 2.9;
  put(drawing, {area.left + 1.2, at(across.from, chart.y.front()).y + (rises ? under : over)}, chart.first,
      {2.5, true, Align::start, ink});
  put(drawing, {area.right() - 1.2, at(across.to, chart.y.back()).y + (rises ? over : under)}, chart.last,
      {2.5, true, Align::end, ink});
}

}  // namespace laywright
