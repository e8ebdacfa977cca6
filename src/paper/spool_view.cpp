#include "paper/spool_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "figures/figures.h"
#include "paper/drafting.h"

namespace laywright {
namespace {

constexpr Color spool_fill{0.86, 0.86, 0.89};
constexpr Color winding_fill{0.36, 0.62, 0.80};
const Pen outline{ink, 0.25, {}};
const Pen helper{faint_ink, 0.1, {}};

// Room for dimension lines at the sides, above and below the spool.
constexpr double side_room = 15.0, top_room = 6.0, below_room = 2.0;

// Places on the page; y is measured from the axis, positive upward.
struct Frame {
  double left = 0.0, axis = 0.0, scale = 1.0;

  [[nodiscard]] Point at(double x_mm, double y_mm) const { return {left + x_mm * scale, axis - y_mm * scale}; }
};

// Flange and barrel have no thickness in a plan; a flange is drawn this thick.
double drawn_thickness(const SectionCut& cut) { return 0.03 * 2.0 * cut.rim_radius_mm; }

void draw_half(Drawing& drawing, const Frame& frame, const SectionCut& cut, const SurfaceProfile& surface,
               double up) {
  const double rim = up * cut.rim_radius_mm, thickness = drawn_thickness(cut);
  const auto flange = [&](double foot, double edge, double out) {
    const std::vector<Point> points{frame.at(foot, up * cut.barrel_left_mm), frame.at(edge, rim),
                                    frame.at(edge + out, rim), frame.at(foot + out, 0.0)};
    const Point axis = frame.at(foot, 0.0);
    drawing.add(Shape{{points[0], points[1], points[2], points[3], axis}, true, spool_fill, {}});
    drawing.add(Shape{points, false, {}, outline});
  };
  flange(cut.left_face(cut.barrel_left_mm), cut.left_face(cut.rim_radius_mm), -thickness);
  flange(cut.right_face(cut.barrel_right_mm), cut.right_face(cut.rim_radius_mm), thickness);

  const Point left = frame.at(0.0, up * cut.barrel_left_mm);
  const Point right = frame.at(cut.inside_width_mm, up * cut.barrel_right_mm);
  Shape winding{{left}, true, winding_fill, outline};
  for (std::size_t i = 0; i < surface.x_mm.size(); ++i) {
    winding.points.push_back(frame.at(surface.x_mm[i], up * surface.mean_mm[i]));
  }
  winding.points.push_back(right);
  drawing.add(std::move(winding));
  drawing.add(Shape{{left, right, frame.at(cut.inside_width_mm, 0.0), frame.at(0.0, 0.0)}, true, spool_fill, {}});
  draw_line(drawing, left, right, outline);
}

void draw_upright(Drawing& drawing, const Frame& frame, double edge_x_mm, double radius_mm, double page_x,
                  const std::string& words) {
  for (const double y : {radius_mm, -radius_mm}) {
    const Point edge = frame.at(edge_x_mm, y);
    const double past = page_x < edge.x ? -1.0 : 1.0;
    draw_line(drawing, edge, {page_x + past, edge.y}, helper);
  }
  draw_dimension(drawing, {page_x, frame.at(0.0, radius_mm).y}, {page_x, frame.at(0.0, -radius_mm).y}, words);
}

}  // namespace

void draw_spool_view(Drawing& drawing, const Box& box, const SectionCut& cut, const Measurements& measurements) {
  const double width = cut.inside_width_mm, rim = cut.rim_radius_mm, thickness = drawn_thickness(cut);
  const double reach = std::max({0.0, -cut.left_face(rim), cut.right_face(rim) - width}) + thickness;
  const double scale = std::min((box.width - 2.0 * side_room) / (width + 2.0 * reach),
                                (box.height - top_room - below_room) / (2.0 * rim));
  const Frame frame{box.left + 0.5 * (box.width - width * scale),
                    box.top + 0.5 * (box.height + top_room - below_room), scale};

  draw_half(drawing, frame, cut, measurements.surface, 1.0);
  draw_half(drawing, frame, cut, measurements.surface, -1.0);
  const double page_left = frame.at(-reach, 0.0).x, page_right = frame.at(width + reach, 0.0).x;
  draw_line(drawing, {page_left - 3.0, frame.axis}, {page_right + 3.0, frame.axis},
            {ink, 0.18, {4.0, 0.8, 0.6, 0.8}});

  const std::string sign = "\u00D8 ";
  draw_upright(drawing, frame, -thickness, rim, page_left - 10.0, sign + setting(2.0 * rim));
  draw_upright(drawing, frame, 0.0, cut.barrel_left_mm, page_left - 4.5, sign + setting(2.0 * cut.barrel_left_mm));
  const double wound = 0.5 * measurements.outer_diameter.greatest_mm;
  // From where it is measured.
  const auto& highest = measurements.outer_diameter.greatest_at;
  draw_upright(drawing, frame, highest ? highest->x_mm : width, wound, page_right + 4.5,
               sign + figure(2.0 * wound, 2) + " wound");

  const double over = frame.at(0.0, rim).y - 4.0;
  const double foot_left = frame.at(0.0, 0.0).x, foot_right = frame.at(width, 0.0).x;
  for (const double x : {foot_left, foot_right}) {
    draw_line(drawing, {x, over - 1.0}, {x, frame.at(0.0, rim).y}, helper);
  }
  draw_dimension(drawing, {foot_left, over}, {foot_right, over}, setting(width));
}

}  // namespace laywright
