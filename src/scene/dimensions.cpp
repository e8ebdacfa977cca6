#include "scene/dimensions.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

#include "base/inch.h"
#include "base/quantity_text.h"
#include "base/round_figure.h"
#include "base/units.h"
#include "scene/camera.h"
#include "scene/spool_solid.h"

namespace laywright {

namespace {

// How far a dimension line stands off the rim, as a share of the rim's radius.
constexpr double stand_off = 0.16;

// Upright, at x, from the rim's height down: of a diameter.
DimensionLine upright(double line_x, double measured_x, double radius, std::string text) {
  return {{line_x, radius, 0.0},
          {line_x, -radius, 0.0},
          {measured_x, radius, 0.0},
          {measured_x, -radius, 0.0},
          std::move(text)};
}

// An angle near another where the wind is not cut away.
std::optional<double> free_near(const View& view, double angle) {
  const std::vector<Sector> removed = removed_sectors(view);
  for (const double off : {0.0, 0.3, -0.3, 0.6, -0.6, 1.0, -1.0}) {
    if (!is_removed(removed, angle + off)) return angle + off;
  }
  return std::nullopt;
}

// Where an arrow from that side, 0 upper and pi lower, meets the circle through the highest fiber.
std::optional<double> touched_from(const View& view, double side, double own) {
  constexpr double near_enough = std::numbers::pi / 3.0;
  const bool at_it = std::abs(std::remainder(own - side, 2.0 * std::numbers::pi)) <= near_enough;
  if (at_it && !is_removed(removed_sectors(view), own)) return own;
  return free_near(view, side);
}

// None where it would point at what is not there.
std::optional<DimensionLine> wound_line(const SceneSource& source, const View& view, double off) {
  const OuterDiameter& outer = source.measurements().outer_diameter;
  const bool whole = visible_fiber(source, view).end == source.build().nodes.size();
  if (!outer.greatest_at || !whole) return std::nullopt;
  const double x = outer.greatest_at->x_mm, own = outer.greatest_at->angle_deg * rad_per_deg;
  if (x < view.x_from_mm.value_or(x) || x > view.x_to_mm.value_or(x)) return std::nullopt;
  const std::optional<double> above = touched_from(view, 0.0, own),
                              below = touched_from(view, std::numbers::pi, own);
  if (!above && !below) return std::nullopt;
  const double first = above ? *above : *below, second = below ? *below : *above;
  const double reach = 0.5 * source.plan().spool().flange_diameter_mm + off, radius = 0.5 * outer.greatest_mm;
  return DimensionLine{in_space(x, reach, first),
                       in_space(x, reach, second),
                       in_space(x, radius, first),
                       in_space(x, radius, second),
                       {},
                       true};
}

}  // namespace

std::vector<DimensionLine> make_dimensions(const SceneSource& source, const View& view) {
  std::vector<DimensionLine> lines;
  if (!view.dimensions) return lines;
  const Plan& plan = source.plan();
  const Spool& spool = plan.spool();
  const double rim = 0.5 * spool.flange_diameter_mm, off = stand_off * rim;
  const double thickness = flange_thickness_share * spool.flange_diameter_mm;
  const double left = left_face_x(plan, rim, 0.0);
  const auto text = [&](double mm) { return short_size_text(mm, 2, view.units == Units::inch); };

  lines.push_back(upright(left - thickness - off, left - thickness, rim,
                          fmt::format("rim \u00D8 {}", text(spool.flange_diameter_mm))));
  if (std::optional<DimensionLine> wound = wound_line(source, view, off)) {
    wound->text = fmt::format("wound \u00D8 {}", text(source.measurements().outer_diameter.greatest_mm));
    lines.push_back(std::move(*wound));
  }
  const double barrel = 0.5 * spool.barrel_diameter_mm;
  lines.push_back({{0.0, rim + off, 0.0},
                   {spool.inside_width_mm, rim + off, 0.0},
                   {0.0, barrel, 0.0},
                   {spool.inside_width_mm, barrel, 0.0},
                   fmt::format("inside width {}", text(spool.inside_width_mm))});
  return lines;
}

ScaleBar make_scale_bar(const View& view) {
  const double per_px = mm_per_px(view);
  const double most_mm = std::max(1, view.width_px) / 5.0 * per_px;
  const bool inch = view.units == Units::inch;
  const double unit = inch ? mm_per_inch : 1.0;
  const double length = round_figure_below(most_mm / unit);
  return {length * unit, length * unit / per_px,
          fmt::format("{} {}", short_figure(length, 6), unit_in(Amount::small_length, inch))};
}

AxisMark make_axis(const Plan& plan) {
  const double rim = 0.5 * plan.spool().flange_diameter_mm;
  const double thickness = flange_thickness_share * plan.spool().flange_diameter_mm;
  const double left = left_face_x(plan, rim, 0.0) - thickness, right = right_face_x(plan, rim, 0.0) + thickness;
  const double beyond = stand_off * rim;
  return {{left - beyond, 0.0, 0.0}, {right + beyond, 0.0, 0.0}, {left, rim, 0.0}, {left, rim + 0.5 * beyond, 0.0}};
}

}  // namespace laywright
