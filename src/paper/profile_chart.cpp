#include "paper/profile_chart.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "base/round_figure.h"
#include "paper/colors.h"
#include "paper/drafting.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr double profile_margin = 12.0, legend_type = 3.0, note_type = 2.8;
constexpr Color band_color{0.80, 0.89, 0.95}, hidden_color{0.93, 0.93, 0.94}, flange_color{0.70, 0.71, 0.74};
const Pen seen_pen{blue_hue, 0.45, {}}, build_pen{ink, 0.4, {2.4, 1.2}}, spool_pen{ink, 0.2, {}},
    profile_grid_pen{{0.86, 0.86, 0.88}, 0.1, {}};

struct Range {
  double from = std::numeric_limits<double>::infinity(), to = -from;

  void add(double value) { from = std::min(from, value), to = std::max(to, value); }
};

// All that is drawn, with some room, out to round values.
Range diameters_of(const ProfileChart& chart, double step_count) {
  Range range;
  for (std::size_t i = 0; i < chart.seen_mm.size(); ++i) {
    range.add(chart.seen_mm[i] - chart.sigma_mm[i]);
    range.add(chart.seen_mm[i] + chart.sigma_mm[i]);
  }
  for (const double each : chart.build_mm) range.add(each);
  for (const ProfileChart::Level& level : chart.build_levels) range.add(level.diameter_mm);
  const double step = round_figure_above(std::max(range.to - range.from, 0.01) / step_count);
  return {step * std::floor(range.from / step - 0.2), step * std::ceil(range.to / step + 0.2)};
}

class Plot {
 public:
  Plot(Drawing& drawing, const Box& area, const ProfileChart& chart)
      : drawing_(drawing), area_(area), chart_(chart), up_(diameters_of(chart, 5.0)) {}

  void draw() const {
    draw_what_is_hidden();
    draw_grid();
    drawing_.add(ClipBegin{area_});
    draw_band();
    if (!chart_.build_mm.empty()) draw_curve(chart_.build_x_mm, chart_.build_mm, build_pen);
    for (const ProfileChart::Level& level : chart_.build_levels)
      draw_line(drawing_, at(level.from_mm, level.diameter_mm), at(level.to_mm, level.diameter_mm), build_pen);
    draw_curve(chart_.seen_x_mm, chart_.seen_mm, seen_pen);
    drawing_.add(ClipEnd{});
    draw_frame();
  }

 private:
  [[nodiscard]] Point at(double x_mm, double diameter_mm) const {
    return {area_.left + area_.width * x_mm / chart_.width_mm,
            area_.bottom() - area_.height * (diameter_mm - up_.from) / (up_.to - up_.from)};
  }

  void draw_what_is_hidden() const {
    const double from = at(chart_.seen_x_mm.front(), 0.0).x, to = at(chart_.seen_x_mm.back(), 0.0).x;
    draw_box(drawing_, {area_.left, area_.top, from - area_.left, area_.height}, hidden_color, {});
    draw_box(drawing_, {to, area_.top, area_.right() - to, area_.height}, hidden_color, {});
  }

  void draw_grid() const {
    for (const double diameter : ruler_ticks(upright_ruler())) {
      const double y = at(0.0, diameter).y;
      draw_line(drawing_, {area_.left, y}, {area_.right(), y}, profile_grid_pen);
    }
  }

  void draw_band() const {
    Shape band{{}, true, band_color, {}};
    const std::size_t count = chart_.seen_mm.size();
    for (std::size_t i = 0; i < count; ++i)
      band.points.push_back(at(chart_.seen_x_mm[i], chart_.seen_mm[i] + chart_.sigma_mm[i]));
    for (std::size_t i = count; i-- > 0;)
      band.points.push_back(at(chart_.seen_x_mm[i], chart_.seen_mm[i] - chart_.sigma_mm[i]));
    drawing_.add(std::move(band));
  }

  void draw_curve(const std::vector<double>& x_mm, const std::vector<double>& diameter_mm, const Pen& pen) const {
    Shape curve{{}, false, {}, pen};
    for (std::size_t i = 0; i < x_mm.size(); ++i) curve.points.push_back(at(x_mm[i], diameter_mm[i]));
    drawing_.add(std::move(curve));
  }

  // Both flanges are seen cut, as in a section.
  void draw_frame() const {
    draw_box(drawing_, {area_.left - flange, area_.top, flange, area_.height}, flange_color, spool_pen);
    draw_box(drawing_, {area_.right(), area_.top, flange, area_.height}, flange_color, spool_pen);
    draw_line(drawing_, {area_.left, area_.bottom()}, {area_.right(), area_.bottom()}, spool_pen);
    draw_ruler(drawing_, upright_ruler());
    draw_ruler(drawing_, {{area_.left, area_.bottom()},
                          area_.width,
                          0.0,
                          chart_.width_mm,
                          false,
                          "along the axis from the left flange, mm"});
  }

  [[nodiscard]] Ruler upright_ruler() const {
    return {{area_.left - flange, area_.bottom()}, area_.height, up_.from, up_.to, true, "outer diameter, mm"};
  }

  static constexpr double flange = 3.0;
  Drawing& drawing_;
  Box area_;
  const ProfileChart& chart_;
  Range up_;
};

struct Entry {
  std::string words;
  std::optional<Color> fill;
  std::optional<Pen> pen;
};

std::vector<Entry> entries_of(const ProfileChart& chart) {
  std::vector<Entry> entries{{"photograph, one sigma to either side", band_color, seen_pen}};
  if (!chart.build_mm.empty())
    entries.push_back({"build: mean of crests round the spool", {}, build_pen});
  else if (!chart.build_levels.empty())
    entries.push_back({"build: left, middle, right", {}, build_pen});
  entries.push_back({"hidden by the flanges' rims", hidden_color, {}});
  return entries;
}

void draw_legend(Drawing& drawing, Point at, const ProfileChart& chart) {
  constexpr double sign = 9.0, gap = 2.0, between = 5.5;
  const Type type{legend_type, false, Align::start, ink};
  for (const Entry& entry : entries_of(chart)) {
    if (entry.fill) draw_box(drawing, {at.x, at.y - 2.6, sign, 3.2}, entry.fill, {});
    if (entry.pen) draw_line(drawing, {at.x, at.y - 1.0}, {at.x + sign, at.y - 1.0}, *entry.pen);
    put(drawing, {at.x + sign + gap, at.y}, entry.words, type);
    at.x += sign + gap + width_of(entry.words, type) + between;
  }
}

}  // namespace

Drawing profile_chart(const ProfileChart& chart) {
  Drawing drawing;
  drawing.width_mm = 240.0;
  drawing.title = chart.title;
  const Type note{note_type, false, Align::start, faint_ink};
  const double width = drawing.width_mm - 2.0 * profile_margin;
  std::vector<std::string> lines;
  for (const std::string& each : chart.notes)
    for (std::string& line : lines_of(each, width, note)) lines.push_back(std::move(line));
  const Box area{profile_margin + 18.0, 33.0, width - 21.0, 85.0};
  const double foot = area.bottom() + 15.0;
  drawing.height_mm = foot + 1.3 * note_type * static_cast<double>(lines.size()) + 4.0;
  put_title(drawing, {profile_margin, 12.0});
  put_within(drawing, {profile_margin, 18.5}, width, chart.line, {3.2, false, Align::start, faint_ink});
  draw_legend(drawing, {area.left, 28.0}, chart);
  Plot(drawing, area, chart).draw();
  put_lines(drawing, {profile_margin, foot}, lines, note);
  return drawing;
}

}  // namespace laywright
