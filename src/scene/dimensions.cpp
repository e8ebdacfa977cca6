#include "scene/dimensions.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

#include "scene/camera.h"
#include "scene/spool_solid.h"

namespace laywright {

namespace {

constexpr double mm_per_inch = 25.4;

// How far a dimension line stands off the rim, as a share of the rim's radius.
constexpr double stand_off = 0.16;

std::string without_trailing_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

// Greatest 1, 2 or 5 times a power of ten that is no more.
double round_down(double most) {
  const double power = std::pow(10.0, std::floor(std::log10(most) + 1e-12));
  for (const double factor : {5.0, 2.0}) {
    if (factor * power <= most * (1.0 + 1e-12)) return factor * power;
  }
  return power;
}

// Upright, at x, from the rim's height down: of a diameter.
DimensionLine upright(double line_x, double measured_x, double radius, std::string text) {
  return {{line_x, radius, 0.0},      {line_x, -radius, 0.0}, {measured_x, radius, 0.0},
          {measured_x, -radius, 0.0}, std::move(text),        false};
}

// An angle near another where the wind is not cut away.
std::optional<double> free_near(const View& view, double angle) {
  const std::vector<Sector> removed = removed_sectors(view);
  for (const double off : {0.0, 0.3, -0.3, 0.6, -0.6, 1.0, -1.0}) {
    if (!is_removed(removed, angle + off)) return angle + off;
  }
  return std::nullopt;
}

}  // namespace

std::string length_text(double mm, Units units, int places) {
  const bool metric = units == Units::metric;
  const std::string number = without_trailing_zeros(fmt::format("{:.{}f}", metric ? mm : mm / mm_per_inch, places));
  return fmt::format("{} {}", number, metric ? "mm" : "in");
}

std::vector<DimensionLine> make_dimensions(const SceneSource& source, const View& view) {
  std::vector<DimensionLine> lines;
  if (!view.dimensions) return lines;
  const Plan& plan = source.plan();
  const Spool& spool = plan.spool();
  const double rim = 0.5 * spool.flange_diameter_mm, off = stand_off * rim;
  const double thickness = flange_thickness_share * spool.flange_diameter_mm;
  const double left = left_face_x(plan, rim, 0.0);
  const int places = view.units == Units::metric ? 2 : 3;
  const auto text = [&](double mm) { return length_text(mm, view.units, places); };

  lines.push_back(upright(left - thickness - off, left - thickness, rim,
                          fmt::format("rim \u00D8 {}", text(spool.flange_diameter_mm))));
  const double barrel = 0.5 * spool.barrel_diameter_mm;
  lines.push_back({{0.0, rim + off, 0.0},
                   {spool.inside_width_mm, rim + off, 0.0},
                   {0.0, barrel, 0.0},
                   {spool.inside_width_mm, barrel, 0.0},
                   fmt::format("inside width {}", text(spool.inside_width_mm)),
                   false});
  const double wound = source.measurements().outer_diameter.greatest_mm;
  const VisibleFiber fiber = visible_fiber(source, view);
  const bool whole = fiber.end == source.build().nodes.size();
  const std::optional<double> above = free_near(view, 0.0), below = free_near(view, std::numbers::pi);
  if (wound > 0.0 && whole && (above || below)) {
    const double x = std::clamp(0.3 * spool.inside_width_mm, view.x_from_mm.value_or(0.0),
                                view.x_to_mm.value_or(spool.inside_width_mm));
    const double first = above ? *above : *below, second = below ? *below : *above;
    lines.push_back({in_space(x, rim + off, first), in_space(x, rim + off, second), in_space(x, 0.5 * wound, first),
                     in_space(x, 0.5 * wound, second), fmt::format("wound \u00D8 {}", text(wound)), true});
  }
  return lines;
}

ScaleBar make_scale_bar(const View& view) {
  const double per_px = mm_per_px(view);
  const double most_mm = std::max(1, view.width_px) / 5.0 * per_px;
  const double unit = view.units == Units::metric ? 1.0 : mm_per_inch;
  const double length = round_down(most_mm / unit);
  const int places = std::max(0, static_cast<int>(std::ceil(-std::log10(length) - 1e-9)));
  return {length * unit, length * unit / per_px, length_text(length * unit, view.units, places)};
}

AxisMark make_axis(const Plan& plan) {
  const double rim = 0.5 * plan.spool().flange_diameter_mm;
  const double thickness = flange_thickness_share * plan.spool().flange_diameter_mm;
  const double left = left_face_x(plan, rim, 0.0) - thickness, right = right_face_x(plan, rim, 0.0) + thickness;
  const double beyond = stand_off * rim;
  return {{left - beyond, 0.0, 0.0}, {right + beyond, 0.0, 0.0}, {left, rim, 0.0}, {left, rim + 0.5 * beyond, 0.0}};
}

}  // namespace laywright
