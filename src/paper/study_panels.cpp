#include "paper/study_panels.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "advise/sobol_shares.h"
#include "advise/study_statistics.h"
#include "answers/study_report.h"
#include "base/quantity_text.h"
#include "figures/figures.h"
#include "paper/colors.h"
#include "paper/drafting.h"
#include "paper/study_map.h"

namespace laywright {
namespace {

constexpr double small_text = 2.5, head_text = 3.0, head_room = 6.0;
const Pen frame{faint_ink, 0.2, {}};
const Pen curve_pen{blue_hue, 0.5, {}};

struct FigureSpan {
  double low = std::numeric_limits<double>::infinity(), high = -std::numeric_limits<double>::infinity();

  void add(double value) {
    if (!std::isfinite(value)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  }
  [[nodiscard]] bool empty() const { return !(low <= high); }
  // 1/2 where all are alike.
  [[nodiscard]] double share(double value) const { return high > low ? (value - low) / (high - low) : 0.5; }
};

FigureSpan span_of(const Study& study, std::size_t figure) {
  FigureSpan span;
  for (const StudyRow& row : study.rows) {
    if (!row.figures.empty()) span.add(row.figures[figure]);
  }
  return span;
}

void write(Drawing& drawing, Point at, std::string words, Align align = Align::start, bool bold = false,
           bool upward = false) {
  drawing.add(Text{at, std::move(words), bold ? head_text : small_text, align, bold, upward, ink});
}

std::string shown(const OutcomeFigure& f, double value) { return figure(value, f.decimals); }

std::string heading(const OutcomeFigure& f) {
  return f.unit.empty() ? std::string(f.words) : fmt::format("{}, {}", f.words, f.unit);
}

// The key below or beside an axis, with its values at both ends.
void label_across(Drawing& drawing, const Box& plot, const Study& study, const StudyAxis& axis) {
  const double y = plot.bottom() + 3.4;
  write(drawing, {plot.left, y}, study_value(study, axis.path, axis.from));
  write(drawing, {plot.right(), y}, study_value(study, axis.path, axis.to), Align::end);
  write(drawing, {plot.left + 0.5 * plot.width, y + 3.2}, axis.path, Align::middle);
}
void label_upward(Drawing& drawing, const Box& plot, const Study& study, const StudyAxis& axis) {
  const double x = plot.left - 1.2;
  write(drawing, {x, plot.bottom()}, study_value(study, axis.path, axis.from), Align::start, false, true);
  write(drawing, {x, plot.top}, study_value(study, axis.path, axis.to), Align::end, false, true);
  write(drawing, {x - 3.2, plot.top + 0.5 * plot.height}, axis.path, Align::middle, false, true);
}

void draw_color_bar(Drawing& drawing, const Box& bar, const OutcomeFigure& f, const FigureSpan& span) {
  constexpr int steps = 48;
  for (int i = 0; i < steps; ++i) {
    const double height = bar.height / steps;
    // Overlapping, so that no seam shows.
    draw_box(drawing, {bar.left, bar.bottom() - (i + 1) * height, bar.width, height + (i > 0 ? 0.1 : 0.0)},
             map_color((i + 0.5) / steps), std::nullopt);
  }
  draw_box(drawing, bar, std::nullopt, frame);
  write(drawing, {bar.right() + 1.0, bar.top + 2.0}, shown(f, span.high));
  write(drawing, {bar.right() + 1.0, bar.bottom()}, shown(f, span.low));
}

bool is_of(const StudyRow& row, Grade grade) { return row.verdict && row.verdict->grade == grade; }

}  // namespace

void draw_map(Drawing& drawing, const Box& box, const Study& study, std::size_t figure) {
  const OutcomeFigure& f = outcome_figures()[figure];
  const FigureSpan span = span_of(study, figure);
  const Box plot{box.left + 8.0, box.top + head_room, box.width - 26.0, box.height - head_room - 9.0};
  write(drawing, {plot.left, box.top + 3.5}, heading(f), Align::start, true);
  const auto across = study.spec.axes[0].count, upward = study.spec.axes[1].count;
  const double width = plot.width / across, height = plot.height / upward;
  Dots good{{}, std::min({1.2, 0.4 * width, 0.4 * height}), ink};
  Dots halo{{}, 1.5 * good.diameter_mm, paper}, rings{{}, good.diameter_mm, ink};
  for (const StudyRow& row : study.rows) {
    const int i = static_cast<int>(row.index) / upward, k = static_cast<int>(row.index) % upward;
    const Box cell{plot.left + i * width, plot.bottom() - (k + 1) * height, width, height};
    if (row.figures.empty()) {
      drawing.add(ClipBegin{cell});
      draw_hatch(drawing, cell, 1.5, frame);
      drawing.add(ClipEnd{});
      continue;
    }
    draw_box(drawing, {cell.left, cell.top, cell.width + 0.05, cell.height + 0.05},
             map_color(span.share(row.figures[figure])), std::nullopt);
    const Point middle{cell.left + 0.5 * width, cell.top + 0.5 * height};
    if (is_of(row, Grade::good)) good.centres.push_back(middle);
    if (is_of(row, Grade::marginal)) rings.centres.push_back(middle);
  }
  halo.centres = good.centres;
  halo.centres.insert(halo.centres.end(), rings.centres.begin(), rings.centres.end());
  Dots holes{rings.centres, 0.55 * good.diameter_mm, paper};
  for (Dots* dots : {&halo, &good, &rings, &holes}) drawing.add(std::move(*dots));
  draw_box(drawing, plot, std::nullopt, frame);
  label_across(drawing, plot, study, study.spec.axes[0]);
  label_upward(drawing, plot, study, study.spec.axes[1]);
  if (!span.empty()) draw_color_bar(drawing, {plot.right() + 2.0, plot.top, 3.0, plot.height}, f, span);
}

void draw_curve(Drawing& drawing, const Box& box, const Study& study, std::size_t figure) {
  const OutcomeFigure& f = outcome_figures()[figure];
  const StudyAxis& axis = study.spec.axes[0];
  const FigureSpan span = span_of(study, figure);
  const Box plot{box.left + 14.0, box.top + head_room, box.width - 18.0, box.height - head_room - 9.0};
  write(drawing, {plot.left, box.top + 3.5}, heading(f), Align::start, true);
  draw_box(drawing, plot, std::nullopt, frame);
  label_across(drawing, plot, study, axis);
  if (span.empty()) return;
  write(drawing, {plot.left - 1.0, plot.top + 2.0}, shown(f, span.high), Align::end);
  if (span.high > span.low) write(drawing, {plot.left - 1.0, plot.bottom()}, shown(f, span.low), Align::end);
  Shape line;
  line.pen = curve_pen;
  Dots good{{}, 1.4, blue_hue}, rings{{}, 1.4, blue_hue}, points{{}, 0.7, blue_hue};
  for (const StudyRow& row : study.rows) {
    if (row.figures.empty()) continue;
    const double share = static_cast<double>(row.index) / (axis.count - 1);
    // A margin, so that no dot is cut by the frame.
    const double height = 0.04 + 0.92 * span.share(row.figures[figure]);
    const Point at{plot.left + share * plot.width, plot.bottom() - height * plot.height};
    line.points.push_back(at);
    (is_of(row, Grade::good) ? good : is_of(row, Grade::marginal) ? rings : points).centres.push_back(at);
  }
  Dots holes{rings.centres, 0.8, paper};
  drawing.add(std::move(line));
  for (Dots* dots : {&good, &rings, &holes, &points}) drawing.add(std::move(*dots));
}

void draw_histogram(Drawing& drawing, const Box& box, const std::vector<double>& values, const std::string& words) {
  const Box plot{box.left + 6.0, box.top + head_room + 4.0, box.width - 12.0, box.height - head_room - 12.0};
  write(drawing, {plot.left, box.top + 3.5}, words, Align::start, true);
  FigureSpan span;
  for (const double value : values) span.add(value);
  if (span.empty()) return;
  const auto bins = static_cast<std::size_t>(std::clamp(std::sqrt(static_cast<double>(values.size())), 5.0, 40.0));
  std::vector<std::size_t> counts(bins, 0);
  for (const double value : values) {
    ++counts[std::min(bins - 1, static_cast<std::size_t>(span.share(value) * static_cast<double>(bins)))];
  }
  const auto most = static_cast<double>(*std::max_element(counts.begin(), counts.end()));
  const double width = plot.width / static_cast<double>(bins);
  for (std::size_t i = 0; i < bins; ++i) {
    const double height = plot.height * static_cast<double>(counts[i]) / most;
    draw_box(drawing, {plot.left + static_cast<double>(i) * width, plot.bottom() - height, width, height}, sky_hue,
             Pen{paper, 0.2, {}});
  }
  draw_line(drawing, {plot.left, plot.bottom()}, {plot.right(), plot.bottom()}, frame);
  write(drawing, {plot.left, plot.bottom() + 3.4}, figure(span.low, 2));
  write(drawing, {plot.right(), plot.bottom() + 3.4}, figure(span.high, 2), Align::end);
  for (const auto& [share, name] : {std::pair{0.05, "5 %"}, {0.5, "50 %"}, {0.95, "95 %"}}) {
    const double value = quantile(values, share), x = plot.left + span.share(value) * plot.width;
    draw_line(drawing, {x, plot.top - 1.0}, {x, plot.bottom()}, Pen{ink, 0.35, {}});
    const Align align = share < 0.5 ? Align::end : share > 0.5 ? Align::start : Align::middle;
    write(drawing, {x, plot.top - 2.0}, fmt::format("{}: {}", name, figure(value, 2)), align);
  }
}

void draw_shares(Drawing& drawing, const Box& box, const std::vector<ShareBar>& bars) {
  write(drawing, {box.left + 6.0, box.top + 3.5}, "What moves it: shares of the variance", Align::start, true);
  if (bars.empty()) return;
  const double label = 48.0, row = std::min(14.0, (box.height - 16.0) / static_cast<double>(bars.size()));
  const double from = box.left + 6.0 + label, width = box.width - label - 16.0;
  double y = box.top + head_room + 3.0;
  for (const ShareBar& bar : bars) {
    write(drawing, {from - 2.0, y + 0.5 * row}, bar.words, Align::end);
    const auto draw = [&](double top, double share, const Color& color) {
      const double length = width * std::clamp(share, 0.0, 1.0);
      draw_box(drawing, {from, top, length, 0.36 * row}, color, std::nullopt);
      write(drawing, {from + length + 1.0, top + 0.18 * row + 0.9}, figure(share, 2));
    };
    draw(y, bar.first, blue_hue);
    draw(y + 0.4 * row, bar.total, sky_hue);
    y += row;
  }
  draw_line(drawing, {from, box.top + head_room + 2.0}, {from, y}, frame);
  draw_box(drawing, {from, y + 2.0, 3.0, 2.4}, blue_hue, std::nullopt);
  write(drawing, {from + 4.0, y + 4.0}, "alone");
  draw_box(drawing, {from + 18.0, y + 2.0, 3.0, 2.4}, sky_hue, std::nullopt);
  write(drawing, {from + 22.0, y + 4.0}, "with all others");
}

}  // namespace laywright
