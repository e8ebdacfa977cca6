#include "paper/section_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "figures/figures.h"
#include "paper/colors.h"
#include "paper/drafting.h"
#include "paper/section_cut.h"
#include "paper/section_view.h"
#include "paper/spool_view.h"
#include "paper/typeset.h"

namespace laywright {
namespace {

constexpr double section_margin = 12.0;
constexpr double main_top = 32.0;
constexpr double foot_height = 66.0;  // of the band with the whole spool and the details
constexpr double ruler_room = 15.0;
const Pen detail_pen{ink, 0.3, {}};

void draw_title(Drawing& drawing, const Plan& plan, const Build& build, const Measurements& m, double angle_deg) {
  put_title(drawing, {section_margin, 17.0});
  const std::string figures = fmt::format(
      "Axial section at {}\u00B0.  Fiber {} mm, {} turns in {}, {}.  Fill factor {}, rim clearance {} mm, "
      "findings: {}.",
      setting(angle_deg), setting(plan.fiber().diameter_mm), figure(build.turns, 1),
      counted(m.layers.size(), "layer"), length_text(build.length_mm), figure(m.fill_factor, 3),
      figure(m.rim_clearance_mm, 2), m.findings.size());
  drawing.add(Text{{section_margin, 23.5}, figures, 3.2, Align::start, false, false, faint_ink});
}

constexpr const char* no_thickness =
    "Flanges and barrel are drawn without their real thickness, which a plan does not hold.";

// Which colour is which layer: from dark on the barrel to light.
void draw_key(Drawing& drawing, Point at, std::size_t layers) {
  if (layers == 0) return;
  constexpr double from = 16.0, width = 48.0, height = 3.2;
  drawing.add(Text{at, layers > 1 ? "Layer 1" : "Layer", 2.8, Align::start, false, false, ink});
  const Box box{at.x + from, at.y - 2.6, width, height};
  const double band = width / static_cast<double>(layers);
  for (std::size_t i = 0; i < layers; ++i)
    draw_box(drawing, {box.left + band * static_cast<double>(i), box.top, band, height}, layer_color(i + 1, layers),
             {});
  draw_box(drawing, box, {}, Pen{ink, 0.2, {}});
  drawing.add(Text{{box.right() + 2.0, at.y}, fmt::format("{}", layers), 2.8, Align::start, false, false, ink});
}

// The winding space as large as the room allows, in its middle. A flange that would make it small is not shown up to
// its rim.
SectionView fit_winding(const SectionCut& cut, const Box& room) {
  const double d = cut.fiber_diameter_mm, width = cut.inside_width_mm, rim = cut.rim_radius_mm;
  const double left = std::min(0.0, cut.left_face(rim)), right = std::max(width, cut.right_face(rim));
  const double foot = std::min(cut.barrel_left_mm, cut.barrel_right_mm);
  constexpr double wall = 5.0;  // mm of page on which flange and barrel are shown

  const double by_width = (room.width - 2.0 * wall) / (right - left);
  const double wound = cut.surface_radius(0.0, width) - foot;
  const double seen = std::min(rim - foot, std::max(1.15 * wound + 2.0 * d, (room.height - wall) / by_width));
  SectionView view;
  view.scale = std::min(by_width, (room.height - wall) / (seen + d));
  view.from_x_mm = left - wall / view.scale;
  view.to_x_mm = right + wall / view.scale;
  view.from_r_mm = foot - wall / view.scale;
  view.to_r_mm = foot + seen + (seen < rim - foot ? 0.0 : d);
  const Box taken = view.box();
  view.corner = {room.left + 0.5 * (room.width - taken.width), room.bottom() - 0.5 * (room.height - taken.height)};
  return view;
}

// The winding with its rulers. Where the flange is cut off, says where its rim is.
void draw_winding(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  draw_section(drawing, cut, view);
  draw_layer_numbers(drawing, cut, view);
  const Box box = view.box();
  const double top = std::min(view.to_r_mm, cut.rim_radius_mm);
  draw_ruler(drawing, {view.at(view.from_x_mm - 1.5 / view.scale, cut.barrel_left_mm),
                       (top - cut.barrel_left_mm) * view.scale, cut.barrel_left_mm, top, true, "radius, mm"});
  draw_ruler(drawing, {{view.at(0.0, 0.0).x, box.bottom() + 1.5},
                       cut.inside_width_mm * view.scale,
                       0.0,
                       cut.inside_width_mm,
                       false,
                       "from the left flange, mm"});
  if (top < cut.rim_radius_mm) {
    draw_line(drawing, {box.left, box.top}, {box.right(), box.top}, {faint_ink, 0.2, {2.0, 1.0}});
    drawing.add(Text{{box.left + 0.5 * box.width, box.top + 3.6},
                     fmt::format("the rim is at radius {} mm", setting(cut.rim_radius_mm)),
                     2.6,
                     Align::middle,
                     false,
                     false,
                     faint_ink});
  }
}

// A detail of the surface: sixteen diameters wide, twelve high.
struct Detail {
  const char* mark;
  const char* words;
  double middle_x_mm;
};

void draw_detail(Drawing& drawing, const SectionCut& cut, const SectionView& main, const Detail& detail, Box box) {
  constexpr double columns = 16.0;
  const double d = cut.fiber_diameter_mm;
  SectionView view;
  view.scale = box.width / (columns * d);
  view.from_x_mm = detail.middle_x_mm - 0.5 * columns * d;
  view.to_x_mm = detail.middle_x_mm + 0.5 * columns * d;
  const double height = box.height / view.scale;
  // Down from the surface, but hardly below the barrel.
  view.from_r_mm = std::max(cut.surface_radius(view.from_x_mm, view.to_x_mm) + 1.5 * d - height,
                            std::min(cut.barrel_left_mm, cut.barrel_right_mm) - d);
  view.to_r_mm = view.from_r_mm + height;
  view.corner = {box.left, box.bottom()};
  draw_section(drawing, cut, view);
  draw_layer_numbers(drawing, cut, view);
  draw_box(drawing, box, {}, detail_pen);
  draw_scale_bar(drawing, {box.left, box.bottom() + 1.6}, 0.35 * box.width, view.scale);
  drawing.add(Text{{box.left, box.top - 1.5},
                   fmt::format("{}  {}", detail.mark, detail.words),
                   2.8,
                   Align::start,
                   true,
                   false,
                   ink});
  drawing.add(Text{{box.right(), box.top - 1.5},
                   fmt::format("{} times larger", setting(std::round(view.scale / main.scale))),
                   2.8,
                   Align::end,
                   false,
                   false,
                   faint_ink});

  const Point low = main.at(view.from_x_mm, view.from_r_mm), high = main.at(view.to_x_mm, view.to_r_mm);
  draw_box(drawing, {low.x, high.y, high.x - low.x, low.y - high.y}, {}, Pen{ink, 0.25, {}});
  drawing.add(Text{{0.5 * (low.x + high.x), high.y - 1.0}, detail.mark, 2.8, Align::middle, true, false, ink});
}

void draw_details(Drawing& drawing, const SectionCut& cut, const SectionView& main, const Box& band) {
  constexpr double gap = 6.0;
  const double half = 7.0 * cut.fiber_diameter_mm, surface = cut.surface_radius(0.0, cut.inside_width_mm);
  const double width = (band.width - 2.0 * gap) / 3.0;
  const Detail details[] = {{"A", "at the left flange", cut.left_face(surface) + half},
                            {"B", "in the middle", 0.5 * cut.inside_width_mm},
                            {"C", "at the right flange", cut.right_face(surface) - half}};
  double left = band.left;
  for (const Detail& detail : details) {
    draw_detail(drawing, cut, main, detail, {left, band.top + 4.0, width, band.height - 9.0});
    left += width + gap;
  }
}

// What a turn half round the spool shows.
void draw_opposite_side(Drawing& drawing, const SectionCut& cut, const Box& band) {
  drawing.add(Text{{band.left, band.top + 2.5},
                   fmt::format("Opposite side, at {}\u00B0", setting(cut.angle_deg)),
                   2.8,
                   Align::start,
                   true,
                   false,
                   ink});
  const Box room{band.left + ruler_room, band.top + 5.0, band.width - ruler_room, band.height - 14.0};
  draw_winding(drawing, cut, fit_winding(cut, room));
}

}  // namespace

Drawing draw_section_sheet(const Plan& plan, const Build& build, const Measurements& measurements,
                           double angle_deg) {
  Drawing drawing;
  drawing.title = title_of(plan);
  const SectionCut cut = cut_section(plan, build, angle_deg);
  draw_title(drawing, plan, build, measurements, cut.angle_deg);

  const double width = drawing.width_mm - 2.0 * section_margin,
               foot_top = drawing.height_mm - section_margin - foot_height;
  const SectionView main = fit_winding(
      cut, {section_margin + ruler_room, main_top + 6.0, width - ruler_room, foot_top - 14.0 - main_top - 6.0});
  draw_key(drawing, {section_margin, main_top}, cut.layers);
  draw_scale_bar(drawing, {drawing.width_mm - section_margin - 42.0, main_top - 1.5}, 30.0, main.scale);
  draw_winding(drawing, cut, main);

  constexpr double spool_width = 84.0, gap = 6.0;
  draw_spool_view(drawing, {section_margin, foot_top, spool_width, foot_height}, cut, measurements);
  const Box rest{section_margin + spool_width + gap, foot_top, width - spool_width - gap, foot_height};
  // Turns that are large on the page need no enlargement.
  constexpr double clear_mm = 2.6;
  if (cut.fiber_diameter_mm * main.scale < clear_mm) {
    draw_details(drawing, cut, main, rest);
  } else {
    draw_opposite_side(drawing, cut_section(plan, build, cut.angle_deg + 180.0), rest);
  }
  // Put together at run time: GCC 12 believes that moving a text of known length into a part overruns it.
  const std::string note = fmt::format("Dimensions in mm. {}", no_thickness);
  drawing.add(Text{
      {drawing.width_mm - section_margin, drawing.height_mm - 6.0}, note, 2.4, Align::end, false, false, faint_ink});
  return drawing;
}

}  // namespace laywright
