#include "export/map_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "base/inch.h"
#include "export/crossings.h"
#include "figures/figures.h"
#include "paper/drafting.h"
#include "paper/typeset.h"
#include "scene/colouring.h"
#include "scene/unrolled.h"

namespace laywright {

namespace {

constexpr double margin = 12.0;
const Pen frame_pen{ink, 0.3, {}};
const Pen crossing_pen{ink, 0.25, {}};
const Pen crossing_edge{paper, 0.65, {}};  // seen on dark ground, too
constexpr std::size_t most_columns = 2048;

Color color_of(const Rgba& colour) { return {colour.r / 255.0, colour.g / 255.0, colour.b / 255.0}; }

// The map's place on the page, and what it spans.
struct MapFrame {
  Box box;
  double x_from_mm = 0.0, x_to_mm = 0.0;

  [[nodiscard]] double left(double x_mm) const {
    return box.left + (x_mm - x_from_mm) / (x_to_mm - x_from_mm) * box.width;
  }
  // Of a share of the full turn.
  [[nodiscard]] double top(double around) const { return box.bottom() - around * box.height; }
};

void draw_pixels(Drawing& drawing, const MapFrame& frame, const Shell& shell) {
  const UnrolledShell flat = unroll(shell, most_columns);
  // A row is seen half a row to either side of its angle; that of angle 0 at both ends.
  Bitmap bitmap;
  const double half_row = 0.5 * frame.box.height / static_cast<double>(flat.rows);
  bitmap.box = {frame.box.left, frame.box.top - half_row, frame.box.width, frame.box.height + 2.0 * half_row};
  bitmap.width = static_cast<int>(flat.columns);
  bitmap.height = static_cast<int>(flat.rows) + 1;
  bitmap.pixels.reserve(4 * flat.columns * (flat.rows + 1));
  for (std::size_t above = 0; above <= flat.rows; ++above) {
    for (std::size_t column = 0; column < flat.columns; ++column) {
      const Rgba& pixel = flat.at((flat.rows - above) % flat.rows, column);
      bitmap.pixels.insert(bitmap.pixels.end(), {pixel.r, pixel.g, pixel.b, 255});
    }
  }
  drawing.add(ClipBegin{frame.box});
  drawing.add(std::move(bitmap));
  drawing.add(ClipEnd{});
}

// The newest layer that is shown, and whether a node of it is seen.
class Newest {
 public:
  Newest(const SceneSource& source, const View& view, const Shell& shell) : source_(source), shell_(shell) {
    const VisibleFiber fiber = visible_fiber(source, view);
    end_ = fiber.end;
    stroke_ = fiber.first == fiber.end ? 0 : source.stroke_of(fiber.end - 1);
  }

  [[nodiscard]] CrossingLines lines() const {
    return crossing_lines(source_.build(), crossings_of(source_.build(), stroke_, end_));
  }

  [[nodiscard]] bool sees(std::size_t node) const {
    const ShellGrid& grid = shell_.grid;
    const double row = static_cast<double>(node % source_.stations()) * static_cast<double>(grid.rows) /
                       static_cast<double>(source_.stations());
    const double column = (source_.build().nodes.x(node) - grid.x_from_mm) / grid.column_mm;
    if (column < 0.0 || column >= static_cast<double>(grid.columns)) return false;
    const auto nearest = static_cast<std::size_t>(std::lround(row)) % grid.rows;
    const std::uint32_t seen = shell_.node[shell_.index(nearest, static_cast<std::size_t>(column))];
    return seen != no_node && source_.stroke_of(seen) == stroke_;
  }

 private:
  const SceneSource& source_;
  const Shell& shell_;
  std::size_t stroke_ = 0, end_ = 0;
};

// A line that passes the end of the turn goes on at the other end of the page.
void draw_crossings(Drawing& drawing, const MapFrame& frame, const SceneSource& source, const Newest& newest) {
  const NodeStore& nodes = source.build().nodes;
  const auto around = [&](std::size_t node) {
    return static_cast<double>(node % source.stations()) / static_cast<double>(source.stations());
  };
  std::vector<Shape> shapes;
  for (const std::vector<std::size_t>& line : newest.lines()) {
    Shape shape{{}, false, {}, crossing_edge};
    const auto end_shape = [&] {
      if (shape.points.size() > 1) shapes.push_back(shape);
      shape.points.clear();
    };
    double before = 0.0;
    for (const std::size_t node : line) {
      const double at = around(node);
      if (!newest.sees(node) || std::abs(at - before) > 0.5) end_shape();
      before = at;
      if (newest.sees(node)) shape.points.push_back({frame.left(nodes.x(node)), frame.top(at)});
    }
    end_shape();
  }
  drawing.add(ClipBegin{frame.box});
  for (const Shape& shape : shapes) drawing.add(shape);
  for (Shape& shape : shapes) {
    shape.pen = crossing_pen;
    drawing.add(std::move(shape));
  }
  drawing.add(ClipEnd{});
}

void draw_angles(Drawing& drawing, const MapFrame& frame) {
  constexpr int parts = 8;
  for (int part = 0; part <= parts; ++part) {
    const double y = frame.top(static_cast<double>(part) / parts);
    draw_line(drawing, {frame.box.left - 2.0, y}, {frame.box.left, y}, frame_pen);
    drawing.add(Text{{frame.box.left - 2.8, y + 1.0},
                     fmt::format("{}\u00B0", 360 * part / parts),
                     2.8,
                     Align::end,
                     false,
                     false,
                     ink});
  }
  drawing.add(Text{{frame.box.left - 12.0, frame.box.top + 0.5 * frame.box.height},
                   "angle of the spool, from the start of the wind",
                   2.8,
                   Align::middle,
                   false,
                   true,
                   ink});
}

void draw_rulers(Drawing& drawing, const MapFrame& frame, const Plan& plan, Units units) {
  const double width_mm = plan.spool().inside_width_mm;
  const bool inch = units == Units::inch;
  draw_ruler(drawing, {{frame.left(0.0), frame.box.bottom() + 1.5},
                       frame.left(width_mm) - frame.left(0.0),
                       0.0,
                       value_in(Amount::small_length, width_mm, inch),
                       false,
                       fmt::format("from the left flange, {}", unit_in(Amount::small_length, inch))});
  draw_angles(drawing, frame);
}

void draw_scale(Drawing& drawing, Point at, const Legend& legend) {
  constexpr double height = 80.0, width = 6.0;
  const auto steps = static_cast<double>(legend.scale.size());
  for (std::size_t i = 0; i < legend.scale.size(); ++i) {
    const double top = at.y + height * (1.0 - static_cast<double>(i + 1) / steps);
    // A little over the one before, so that no paper shows between them.
    draw_box(drawing, {at.x, top, width, 1.3 * height / steps}, color_of(legend.scale[i]), {});
  }
  draw_box(drawing, {at.x, at.y + height, width, 0.6 * height / steps}, paper, {});
  draw_box(drawing, {at.x, at.y, width, height}, {}, frame_pen);
  for (const LegendTick& tick : legend.ticks) {
    const double y = at.y + height * (1.0 - tick.share);
    draw_line(drawing, {at.x + width, y}, {at.x + width + 1.5, y}, frame_pen);
    drawing.add(Text{{at.x + width + 2.5, y + 1.0}, tick.text, 2.8, Align::start, false, false, ink});
  }
}

// Returns where it ends.
double draw_entries(Drawing& drawing, Point at, const Legend& legend) {
  for (const LegendEntry& entry : legend.entries) {
    draw_box(drawing, {at.x, at.y, 5.0, 3.6}, color_of(entry.colour), Pen{ink, 0.15, {}});
    drawing.add(Text{{at.x + 7.0, at.y + 2.9}, entry.text, 2.8, Align::start, false, false, ink});
    at.y += 5.6;
  }
  return at.y;
}

void draw_legend(Drawing& drawing, Point at, const Legend& legend, bool crossings) {
  drawing.add(Text{{at.x, at.y}, legend.title, 3.0, Align::start, true, false, ink});
  at.y += 4.0;
  if (!legend.unit.empty()) {
    const std::string unit = legend.unit == "d" ? "in fiber diameters" : "in " + legend.unit;
    drawing.add(Text{{at.x, at.y}, unit, 2.8, Align::start, false, false, faint_ink});
    at.y += 4.0;
  }
  if (!legend.scale.empty()) {
    draw_scale(drawing, at, legend);
    at.y += 90.0;
  } else {
    at.y = draw_entries(drawing, at, legend) + 4.0;
  }
  if (!crossings) return;
  draw_line(drawing, {at.x, at.y}, {at.x + 6.0, at.y}, crossing_pen);
  drawing.add(Text{{at.x + 8.0, at.y + 1.0}, "turns cross those", 2.8, Align::start, false, false, ink});
  drawing.add(Text{{at.x + 8.0, at.y + 4.6}, "of the layer below", 2.8, Align::start, false, false, ink});
}

std::string what_is_shown(const SceneSource& source, const View& view) {
  const auto all = static_cast<int>(source.build().strokes.size());
  const int last = std::min(view.last_layer.value_or(all), all), first = std::min(view.first_layer, last);
  if (first == last) return fmt::format("Layer {} unrolled", first);
  if (first == 1 && last == all) return "The surface unrolled";
  if (first == 1) return fmt::format("The surface of layer {} unrolled", last);
  return fmt::format("Layers {} to {} unrolled", first, last);
}

void draw_title(Drawing& drawing, const SceneSource& source, const View& view) {
  put_title(drawing, {margin, 17.0});
  const double turns = std::min(view.until_turn.value_or(source.build().turns), source.build().turns);
  drawing.add(
      Text{{margin, 23.5},
           fmt::format("{}: along the axis to the right, once around the spool upward.  Fiber {} mm, {} turns, {}.",
                       what_is_shown(source, view), setting(source.d()), figure(turns, 1),
                       length_text(length_at_turn(source, turns))),
           3.2,
           Align::start,
           false,
           false,
           faint_ink});
}

}  // namespace

Drawing draw_map_sheet(const SceneSource& source, const View& view) {
  constexpr double ruler_room = 16.0, legend_room = 46.0, top = 31.0, foot = 22.0;
  Drawing drawing;
  drawing.title = title_of(source.plan());
  draw_title(drawing, source, view);
  const Shell shell = make_shell(source, view);
  MapFrame frame;
  frame.box = {margin + ruler_room, top, drawing.width_mm - 2.0 * margin - ruler_room - legend_room,
               drawing.height_mm - top - foot};
  frame.x_from_mm = shell.grid.x_from_mm;
  frame.x_to_mm = shell.grid.x_from_mm + shell.grid.column_mm * static_cast<double>(shell.grid.columns);
  draw_pixels(drawing, frame, shell);
  const Newest newest(source, view, shell);
  const bool crossings = !newest.lines().empty();
  draw_crossings(drawing, frame, source, newest);
  draw_box(drawing, frame.box, {}, frame_pen);
  draw_rulers(drawing, frame, source.plan(), view.units);
  const Colourer colourer(source, view);
  draw_legend(drawing, {frame.box.right() + 6.0, top + 3.0}, colourer.legend(), crossings);
  return drawing;
}

}  // namespace laywright
