// The build as it will look: a picture (or its outline), the spool with its dimensions, and the section at three
// places.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "figures/both_units.h"
#include "figures/figures.h"
#include "paper/drafting.h"
#include "paper/section_cut.h"
#include "paper/section_view.h"
#include "paper/setup_parts.h"
#include "paper/spool_view.h"

namespace laywright {
namespace {

constexpr double detail_height = 21.0;
constexpr Color spool_gray{0.88, 0.88, 0.90};
const Pen picture_outline{ink, 0.3, {}};

// Some turns, evenly over the width, that nothing is wound on: of the last layer, and of the one before where the last
// has not come yet.
std::vector<std::size_t> turns_on_top(const SetupSheet& sheet) {
  constexpr double most = 60.0;
  const Build& build = sheet.build;
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const std::size_t turns = build.nodes.size() / stations;
  const double width = sheet.plan.spool().inside_width_mm;
  const double step = std::max({width / most, sheet.plan.traverse().pitch_mm, build.fiber_diameter_mm});
  std::vector<bool> taken(static_cast<std::size_t>(width / step) + 1, false);
  std::vector<std::size_t> on_top;
  for (std::size_t turn = turns; turn-- > 0 && on_top.size() < taken.size();) {
    const double x = std::clamp(build.nodes.x(turn * stations), 0.0, width);
    const auto place = static_cast<std::size_t>(x / step);
    if (taken[place]) continue;
    taken[place] = true;
    on_top.push_back(turn);
    // Two layers cover the width; what still shows then is bare.
    if (build.strokes.size() > 2 && turn * stations < build.strokes[build.strokes.size() - 2].first_node) break;
  }
  return on_top;
}

// Seen from the side, with some turns of the uppermost layer as they lie on the near half of the spool.
void draw_outline(Drawing& page, const Box& box, const SetupSheet& sheet, const SectionCut& cut) {
  const double rim = cut.rim_radius_mm, wall = 0.06 * rim, width = cut.inside_width_mm;
  const double left_rim = std::min(0.0, cut.left_face(rim)), right_rim = std::max(width, cut.right_face(rim));
  const double scale = std::min(box.width / (right_rim - left_rim + 2.0 * wall), 0.96 * box.height / (2.0 * rim));
  const Point middle{box.left + 0.5 * box.width, box.top + 0.5 * box.height};
  const auto at = [&](double x, double y) {
    return Point{middle.x + (x - 0.5 * width) * scale, middle.y - y * scale};
  };
  Shape winding{{}, true, paper, picture_outline};
  const SurfaceProfile& surface = sheet.measurements.surface;
  for (std::size_t i = 0; i < surface.x_mm.size(); ++i)
    winding.points.push_back(at(surface.x_mm[i], surface.mean_mm[i]));
  for (std::size_t i = surface.x_mm.size(); i-- > 0;)
    winding.points.push_back(at(surface.x_mm[i], -surface.mean_mm[i]));
  if (!winding.points.empty()) page.add(std::move(winding));

  for (const std::size_t turn : turns_on_top(sheet)) {
    Shape line{{}, false, {}, Pen{{0.45, 0.45, 0.48}, 0.12, {}}};
    constexpr std::size_t pieces = 12;
    const auto stations = static_cast<std::size_t>(sheet.build.stations_per_turn);
    for (std::size_t p = 0; p <= pieces; ++p) {
      const std::size_t node = turn * stations + stations * p / (2 * pieces);
      const double angle = std::acos(-1.0) * static_cast<double>(p) / pieces;
      line.points.push_back(at(sheet.build.nodes.x(node), sheet.build.nodes.r(node) * std::cos(angle)));
    }
    page.add(std::move(line));
  }
  const auto flange = [&](double foot, double edge, double out) {
    page.add(Shape{{at(foot, 0.0), at(edge, rim), at(edge + out, rim), at(edge + out, -rim), at(edge, -rim)},
                   true,
                   spool_gray,
                   picture_outline});
  };
  flange(cut.left_face(cut.barrel_left_mm), cut.left_face(rim), -wall);
  flange(cut.right_face(cut.barrel_right_mm), cut.right_face(rim), wall);
  draw_line(page, at(left_rim - 2.0 * wall, 0.0), at(right_rim + 2.0 * wall, 0.0),
            {ink, 0.15, {4.0, 0.8, 0.6, 0.8}});
}

// As large as the box allows, in its middle.
void draw_picture(Drawing& page, const Box& box, Bitmap picture) {
  const double scale = std::min(box.width / picture.width, box.height / picture.height);
  const double width = scale * picture.width, height = scale * picture.height;
  picture.box = {box.left + 0.5 * (box.width - width), box.top + 0.5 * (box.height - height), width, height};
  page.add(std::move(picture));
}

void draw_detail(Drawing& page, const Box& box, const SectionCut& cut, const std::string& words, double middle_x) {
  constexpr double turns_high = 7.5;
  const double d = cut.fiber_diameter_mm;
  SectionView view;
  view.scale = box.height / (turns_high * d);
  const double half = 0.5 * box.width / view.scale;
  view.from_x_mm = middle_x - half;
  view.to_x_mm = middle_x + half;
  view.from_r_mm = std::max(cut.surface_radius(view.from_x_mm, view.to_x_mm) + d - turns_high * d,
                            std::min(cut.barrel_left_mm, cut.barrel_right_mm) - d);
  view.to_r_mm = view.from_r_mm + turns_high * d;
  view.corner = {box.left, box.bottom()};
  draw_section(page, cut, view);
  draw_layer_numbers(page, cut, view);
  draw_box(page, box, {}, Pen{ink, 0.25, {}});
  put(page, {box.left, box.top - 1.0}, words, {2.5, false, Align::start, ink});
}

void draw_details(Drawing& page, const Box& band, const SectionCut& cut) {
  constexpr double gap = 4.0, turns_wide = 7.5;
  const double width = (band.width - 2.0 * gap) / 3.0;
  // A little of the flange is seen.
  const double half = (0.5 * width / band.height * turns_wide - 1.0) * cut.fiber_diameter_mm;
  const double surface = cut.surface_radius(0.0, cut.inside_width_mm);
  const double places[] = {cut.left_face(surface) + half, 0.5 * cut.inside_width_mm, cut.right_face(surface) - half};
  if (2.0 * (half + cut.fiber_diameter_mm) > cut.inside_width_mm) {
    // The whole width, with a little of both flanges.
    const double wide = (cut.inside_width_mm / cut.fiber_diameter_mm + 4.0) / turns_wide * band.height;
    const Box box{band.left + 0.5 * (band.width - wide), band.top, wide, band.height};
    draw_detail(page, box, cut, "Section", places[1]);
    return;
  }
  const char* words[] = {"Section at the left flange", "in the middle", "at the right flange"};
  for (int i = 0; i < 3; ++i) {
    draw_detail(page, {band.left + i * (width + gap), band.top, width, band.height}, cut, words[i], places[i]);
  }
}

}  // namespace

double draw_pictures(Drawing& page, const Box& band, const SetupSheet& sheet) {
  const double band_height = sheet.paper == Paper::a4 ? 44.0 : 34.0;
  const SectionCut cut = cut_section(sheet.plan, sheet.build, 0.0);
  const double half = 0.5 * band.width;
  const Box left{band.left, band.top, half - 4.0, band_height};
  if (sheet.picture.pixels.empty()) {
    draw_outline(page, left, sheet, cut);
  } else {
    draw_picture(page, left, sheet.picture);
  }
  draw_spool_view(page, {band.left + half, band.top, half, band_height}, cut, sheet.measurements);
  put(page, {band.right(), band.top + band_height}, "dimensions in mm", {2.5, false, Align::end, faint_ink});
  draw_details(page, {band.left, band.top + band_height + 4.5, band.width, detail_height}, cut);
  return band.top + band_height + 4.5 + detail_height;
}

}  // namespace laywright
