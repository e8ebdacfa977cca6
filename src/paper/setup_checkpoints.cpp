#include <algorithm>

#include <fmt/format.h>

#include "figures/both_units.h"
#include "figures/dial_words.h"
#include "figures/figures.h"
#include "paper/curve_chart.h"
#include "paper/drafting.h"
#include "paper/setup_parts.h"

namespace laywright {
namespace {

constexpr double checkpoint_height = 6.6, head_height = 9.4;
constexpr std::size_t most_rows = 11;
const Pen rule{ink, 0.15, {}};

// Left ends of the columns, in mm from the left of the band, and its right end. Planned figures, then blanks.
struct Columns {
  double left[11];
};

Columns columns_of(const Box& band) {
  constexpr double shares[] = {0.09, 0.125, 0.095, 0.105, 0.0975, 0.0975, 0.0975, 0.0975, 0.0975, 0.0975};
  Columns columns{};
  double at = band.left;
  for (int i = 0; i < 10; ++i) {
    columns.left[i] = at;
    at += shares[i] * band.width;
  }
  columns.left[10] = band.right();
  return columns;
}

// `own_counter`: its figures bear the counter's own unit.
void draw_head(Drawing& page, const Columns& c, double top, bool inch, bool own_counter) {
  const char* names[] = {"After", "Counter", "Turns", "Time", "left", "middle", "right", "left", "middle", "right"};
  const Type small{2.5, false, Align::middle, faint_ink};
  const std::string length = unit_in(Amount::fiber_length, inch), diameter = unit_in(Amount::small_length, inch);
  const std::string units[] = {"layer", own_counter ? "" : length, "", "", diameter, diameter, diameter, "", "", ""};
  put(page, {0.5 * (c.left[4] + c.left[7]), top + 2.4}, "Outer diameter, planned", {2.5, true, Align::middle, ink});
  put(page, {0.5 * (c.left[7] + c.left[10]), top + 2.4}, "Outer diameter, as wound",
      {2.5, true, Align::middle, ink});
  for (int i = 0; i < 10; ++i) {
    const double middle = 0.5 * (c.left[i] + c.left[i + 1]);
    put(page, {middle, top + (i < 4 ? 4.2 : 5.3)}, names[i], {2.5, true, Align::middle, ink});
    put(page, {middle, top + 7.6}, units[i], small);
  }
}

void draw_row(Drawing& page, const Columns& c, double top, const Checkpoint& check, const SetupSheet& sheet) {
  const bool inch = in_inches(sheet.plan);
  const auto cell = [&](int column, const std::string& own, const std::string& other) {
    const double middle = 0.5 * (c.left[column] + c.left[column + 1]);
    const double room = c.left[column + 1] - c.left[column] - 1.0;
    put_within(page, {middle, top + (other.empty() ? 4.1 : 3.1)}, room, own, {2.7, true, Align::middle, ink});
    if (!other.empty()) put_within(page, {middle, top + 5.7}, room, other, {2.5, false, Align::middle, faint_ink});
  };
  const auto both = [&](int column, Amount amount, double value, int decimals) {
    cell(column, figure_in(amount, value, decimals, inch),
         figure_in(amount, value, decimals, !inch) + ' ' + unit_in(amount, !inch));
  };
  // At the end it is measured as it lies, with a layer that is not whole.
  const bool unfinished = check.at_end && sheet.measurements.unfinished_layer;
  cell(0, fmt::format("{}{}", check.layer, check.at_end ? ", end" : ""), unfinished ? "unfinished" : "");
  if (check.counter_reading && sheet.run.counter.reading) {
    cell(
        1, counter_shows(*check.counter_reading, sheet.run.counter.reading->unit),
        figure_in(Amount::fiber_length, check.length_mm / 1e3, 1, inch) + ' ' + unit_in(Amount::fiber_length, inch));
  } else {
    both(1, Amount::fiber_length, check.length_mm / 1e3, 1);
  }
  cell(2, figure(check.turns, 1), "");
  cell(3, check.time_s ? duration_text(*check.time_s) : "-", "");
  for (int side = 0; side < 3; ++side) {
    both(4 + side, Amount::small_length, check.outer_diameter_mm[static_cast<std::size_t>(side)], 2);
  }
}

// The most telling ones where there are too many: the first, and the last.
std::vector<Checkpoint> chosen(const std::vector<Checkpoint>& all) {
  if (all.size() <= most_rows) return all;
  std::vector<Checkpoint> some(all.begin(), all.begin() + 3);
  some.insert(some.end(), all.end() - static_cast<std::ptrdiff_t>(most_rows - 3), all.end());
  return some;
}

}  // namespace

double draw_checkpoints(Drawing& page, const Box& band, const SetupSheet& sheet) {
  const double head = draw_heading(page, band.left, band.width, band.top,
                                   "Checkpoints: stop here, compare, write down what you measure");
  const std::vector<Checkpoint> rows = chosen(sheet.run.checkpoints);
  const Columns columns = columns_of(band);
  const bool inch = in_inches(sheet.plan);
  const double first = head + head_height, bottom = first + checkpoint_height * static_cast<double>(rows.size());
  draw_head(page, columns, head + 0.6, inch, sheet.run.counter.reading.has_value());
  double top = first;
  for (const Checkpoint& check : rows) {
    draw_line(page, {band.left, top}, {band.right(), top}, rule);
    draw_row(page, columns, top, check, sheet);
    top += checkpoint_height;
  }
  draw_line(page, {band.left, bottom}, {band.right(), bottom}, rule);
  for (int i = 7; i <= 10; ++i) {
    draw_line(page, {columns.left[i], first}, {columns.left[i], bottom}, rule);
  }
  draw_line(page, {columns.left[4], first}, {columns.left[4], bottom}, rule);
  return bottom;
}

double draw_charts(Drawing& page, const Box& band, const SetupSheet& sheet) {
  constexpr double height = 39.0, gap = 5.0;
  const MachineCurves& c = sheet.run.curves;
  const bool inch = in_inches(sheet.plan);
  const double width = (band.width - 2.0 * gap) / 3.0;
  CurveChart chart;
  for (const double length : c.length_mm) chart.x.push_back(value_in(Amount::fiber_length, length / 1e3, inch));
  chart.x_words = fmt::format("on the counter, {}", unit_in(Amount::fiber_length, inch));
  const auto draw = [&](int place) {
    draw_curve_chart(page, {band.left + place * (width + gap), band.top, width, height}, chart);
  };
  const auto set = [&](const std::string& title, const std::vector<double>& values, Amount amount, int decimals) {
    chart.y.clear();
    for (const double value : values) chart.y.push_back(value_in(amount, value, inch));
    chart.title = fmt::format("{}, {}", title, unit_in(amount, inch));
    chart.first = chart.last = "";
    if (values.empty()) return;
    chart.first = figure_in(amount, values.front(), decimals, inch) + ' ' + unit_in(amount, inch);
    chart.last = figure_in(amount, values.back(), decimals, inch) + ' ' + unit_in(amount, inch);
  };
  std::vector<double> diameter;
  for (const double radius : c.radius_mm) diameter.push_back(2.0 * radius);
  set("Winding diameter, centre line", diameter, Amount::small_length, 2);
  draw(0);
  set("Tension", c.tension_N, Amount::force, 3);
  chart.instead = "Give wind.tension and a [takeup] table in the plan.";
  draw(1);
  chart.y = c.spool_rpm;
  chart.title = "Spool speed, rpm";
  chart.first = chart.last = "";
  if (!c.spool_rpm.empty()) {
    chart.first = figure(c.spool_rpm.front(), 1) + " rpm";
    chart.last = figure(c.spool_rpm.back(), 1) + " rpm";
  }
  chart.instead = "Give wind.line_speed in the plan.";
  draw(2);
  return band.top + height;
}

}  // namespace laywright
