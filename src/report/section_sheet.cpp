#include "report/section_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/drafting.h"
#include "report/figures.h"
#include "report/layer_colors.h"
#include "report/section_cut.h"
#include "report/section_view.h"
#include "report/spool_view.h"

namespace laywright {
namespace {

constexpr double margin = 12.0;
constexpr double main_top = 33.0;
constexpr double foot_height = 66.0;  // of the band with the whole spool and the details
constexpr double ruler_room = 15.0;
const Pen frame_pen{ink, 0.3, {}};

void draw_title(Drawing& drawing, const Plan& plan, const Build& build, const Measurements& m, double angle_deg) {
  drawing.add(Text{{margin, 17.0}, drawing.title, 5.0, Align::start, true, false, ink});
  const std::string figures = fmt::format(
      "Axial section at {} deg.  Fiber {} mm, {} turns in {} layers, {}.  Fill factor {}, rim clearance {} mm, findings: {}.",
      setting(angle_deg), setting(plan.fiber().diameter_mm), figure(build.turns, 1), m.layers.size(),
      length_text(build.length_mm), figure(m.fill_factor, 3), figure(m.rim_clearance_mm, 2), m.findings.size());
  drawing.add(Text{{margin, 23.5}, figures, 3.2, Align::start, false, false, faint_ink});
}

// Which colour is which layer.
void draw_key(Drawing& drawing, Point right_end) {
  constexpr double chip = 3.6, pitch = 9.0;
  const double left = right_end.x - pitch * layer_colors.size() + (pitch - chip) - 7.0;
  drawing.add(Text{{left - 2.0, right_end.y}, "Layer", 2.8, Align::end, false, false, ink});
  for (std::size_t i = 0; i < layer_colors.size(); ++i) {
    const double x = left + pitch * static_cast<double>(i);
    drawing.add(Dots{{{x + 0.5 * chip, right_end.y - 1.0}}, chip, ink});
    drawing.add(Dots{{{x + 0.5 * chip, right_end.y - 1.0}}, 0.86 * chip, layer_colors[i]});
    drawing.add(Text{{x + chip + 0.8, right_end.y}, fmt::format("{}", i + 1), 2.8, Align::start, false, false, ink});
  }
  drawing.add(Text{{right_end.x, right_end.y}, "and on", 2.8, Align::end, false, false, faint_ink});
}

// The winding space as large as the page allows. A flange that would make it small is not shown up to its rim.
SectionView main_view(const Drawing& drawing, const SectionCut& cut) {
  const double d = cut.fiber_diameter_mm, width = cut.inside_width_mm, rim = cut.rim_radius_mm;
  const double left = std::min(0.0, cut.left_face(rim)), right = std::max(width, cut.right_face(rim));
  const double foot = std::min(cut.barrel_left_mm, cut.barrel_right_mm);
  const double room_x = drawing.width_mm - 2.0 * margin - ruler_room;
  const double room_y = drawing.height_mm - main_top - foot_height - margin - 16.0;
  const double wall = 5.0;  // mm of page on which flange and barrel are shown

  const double by_width = (room_x - 2.0 * wall) / (right - left);
  const double wound = cut.surface_radius(0.0, width) - foot;
  const double seen = std::min(rim - foot, std::max(1.15 * wound + 2.0 * d, (room_y - wall) / by_width));
  SectionView view;
  view.scale = std::min(by_width, (room_y - wall) / (seen + d));
  view.from_x_mm = left - wall / view.scale;
  view.to_x_mm = right + wall / view.scale;
  view.from_r_mm = foot - wall / view.scale;
  view.to_r_mm = foot + seen + (seen < rim - foot ? 0.0 : d);
  const double page_width = (view.to_x_mm - view.from_x_mm) * view.scale;
  view.corner = {margin + ruler_room + 0.5 * (room_x - page_width),
                 main_top + (view.to_r_mm - view.from_r_mm) * view.scale};
  return view;
}

void draw_main(Drawing& drawing, const SectionCut& cut, const SectionView& view) {
  draw_section(drawing, cut, view);
  const Box box = view.box();
  const double top = std::min(view.to_r_mm, cut.rim_radius_mm);
  draw_ruler(drawing, {view.at(view.from_x_mm - 1.5 / view.scale, cut.barrel_left_mm),
                       (top - cut.barrel_left_mm) * view.scale, cut.barrel_left_mm, top, true, "radius, mm"});
  draw_ruler(drawing, {{view.at(0.0, 0.0).x, box.bottom() + 1.5}, cut.inside_width_mm * view.scale, 0.0,
                       cut.inside_width_mm, false, "from the left flange, mm"});
  draw_scale_bar(drawing, {box.left, box.bottom() + 6.0}, 30.0, view.scale);
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
  view.to_r_mm = cut.surface_radius(view.from_x_mm, view.to_x_mm) + 1.5 * d;
  view.from_r_mm = view.to_r_mm - box.height / view.scale;
  view.corner = {box.left, box.bottom()};
  draw_section(drawing, cut, view);
  draw_box(drawing, box, {}, frame_pen);
  draw_scale_bar(drawing, {box.left, box.bottom() + 1.6}, 0.35 * box.width, view.scale);
  drawing.add(Text{{box.left, box.top - 1.5}, fmt::format("{}  {}", detail.mark, detail.words), 2.8, Align::start,
                   true, false, ink});
  drawing.add(Text{{box.right(), box.bottom() + 3.1}, fmt::format("x {}", setting(std::round(view.scale / main.scale))),
                   2.8, Align::end, false, false, faint_ink});

  const Point low = main.at(view.from_x_mm, view.from_r_mm), high = main.at(view.to_x_mm, view.to_r_mm);
  draw_box(drawing, {low.x, high.y, high.x - low.x, low.y - high.y}, {}, Pen{ink, 0.25, {}});
  drawing.add(Text{{0.5 * (low.x + high.x), high.y - 1.0}, detail.mark, 2.8, Align::middle, true, false, ink});
}

void draw_details(Drawing& drawing, const SectionCut& cut, const SectionView& main, Box band) {
  // A turn of this size on the page needs no enlargement.
  constexpr double clear_mm = 2.6;
  if (cut.fiber_diameter_mm * main.scale > clear_mm) return;
  const double half = 7.0 * cut.fiber_diameter_mm, gap = 6.0;
  const double width = (band.width - 2.0 * gap) / 3.0;
  const Detail details[] = {{"A", "at the left flange", half},
                            {"B", "in the middle", 0.5 * cut.inside_width_mm},
                            {"C", "at the right flange", cut.inside_width_mm - half}};
  double left = band.left;
  for (const Detail& detail : details) {
    draw_detail(drawing, cut, main, detail, {left, band.top + 4.0, width, band.height - 9.0});
    left += width + gap;
  }
}

}  // namespace

Drawing draw_section_sheet(const Plan& plan, const Build& build, const Measurements& measurements, double angle_deg) {
  Drawing drawing;
  drawing.title = title_of(plan);
  const SectionCut cut = cut_section(plan, build, angle_deg);
  draw_title(drawing, plan, build, measurements, cut.angle_deg);
  draw_key(drawing, {drawing.width_mm - margin, 29.5});
  const SectionView main = main_view(drawing, cut);
  draw_main(drawing, cut, main);

  const double foot_top = drawing.height_mm - margin - foot_height;
  constexpr double spool_width = 84.0;
  draw_spool_view(drawing, {margin, foot_top, spool_width, foot_height}, cut, measurements);
  draw_details(drawing, cut, main, {margin + spool_width + 6.0, foot_top,
                                    drawing.width_mm - 2.0 * margin - spool_width - 6.0, foot_height});
  drawing.add(Text{{drawing.width_mm - margin, drawing.height_mm - 6.0},
                   "Dimensions in mm. Flanges and barrel are drawn without their real thickness, which a plan does not hold.",
                   2.4, Align::end, false, false, faint_ink});
  return drawing;
}

}  // namespace laywright
