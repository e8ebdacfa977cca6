// One picture for each thing that a picture can show, made by the shipped command and held against what must be seen: by
// closed forms, or by rays through the capsules of the whole fiber (pick.h) and the solids of the spool (sight.h). Each
// property is also asked of a picture of something else, where it must fail. No picture of the program's own is kept.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include <catch2/catch.hpp>

#include "lay/lay.h"
#include "measure/measurements.h"
#include "plan/plan_file.h"
#include "render/picture_file.h"
#include "scene/camera.h"
#include "scene/finding_view.h"
#include "scene/marks.h"
#include "scene/pick.h"
#include "scene/scene.h"
#include "scene/sight.h"

using namespace laywright;

namespace {

constexpr double rim_mm = 70.0, width_mm = 10.0, flange_mm = 0.04 * rim_mm;

SceneSource source_of(const Workshop& shop, const std::string& plan_text) {
  shop.write("rays.lay.toml", plan_text);
  const Plan plan = load_plan(shop.at("rays.lay.toml")).value();
  Progress progress;
  const auto build = std::make_shared<const Build>(lay(plan, {}, progress).value());
  const auto measured = std::make_shared<const Measurements>(measure(plan, *build, progress));
  return {plan, build, measured};
}

// Seen square to the axis and parallel, all of the spool in the picture: mm to a pixel, by the height of the flanges.
double px_mm_of(const PictureFile& side_view) {
  int tallest = 0;
  // Of the right flange: on the left one a mark stands out at the start of angles.
  for (int x = side_view.width / 2; x < side_view.width; ++x) {
    int count = 0;
    for (int y = 0; y < side_view.height; ++y) count += side_view.at(x, y).a > 127 ? 1 : 0;
    tallest = std::max(tallest, count);
  }
  return rim_mm / tallest;
}

const std::string side = "--view side --parallel --plain --transparent --size 800x600 ";

bool is_coloured(const Pixel& pixel) {
  return std::max({pixel.r, pixel.g, pixel.b}) - std::min({pixel.r, pixel.g, pixel.b}) > 30;
}

// Of the pixels that show fiber, or should by the rays through them: the share that do both.
double agreement(const PictureFile& picture, const SceneSource& source, const View& view) {
  int either = 0, both = 0;
  for (int y = 3; y < picture.height; y += 5) {
    for (int x = 3; x < picture.width; x += 4) {
      const auto hit = pick_fiber(source, view, ray_through(view, x + 0.5, y + 0.5));
      const bool met = hit && in_the_way(source, view, hit->place).nothing();
      const bool seen = is_coloured(picture.at(x, y));
      either += met || seen ? 1 : 0;
      both += met && seen ? 1 : 0;
    }
  }
  REQUIRE(either > 150);
  UNSCOPED_INFO(both << " of " << either);
  return static_cast<double>(both) / either;
}

View askew(const SceneSource& source, int width, int height) {
  View view;
  view.width_px = width;
  view.height_px = height;
  view.dimensions = false;
  view.camera.azimuth_deg = 14.0;
  view.camera.elevation_deg = 12.0;
  view.camera = fit_camera(source.plan(), view);
  return view;
}
const std::string same_askew = "--azimuth 14 --elevation 12 --plain --transparent --size 360x300 ";

}  // namespace

TEST_CASE("shell: fiber is seen exactly where rays meet it, also through the flange that stands before it") {
  const Workshop shop;
  const SceneSource source = source_of(shop, spool_plan(72.0));
  const View view = askew(source, 360, 300);
  const PictureFile picture = picture_of(shop, spool_plan(72.0), same_askew);
  CHECK(agreement(picture, source, view) > 0.95);
  CHECK(agreement(picture_of(shop, spool_plan(72.0, "left", 45.0), same_askew), source, view) < 0.95);
}

TEST_CASE("the flange before the wind is of glass, the one behind it is not unless it is asked for") {
  const Workshop shop;
  const std::string plan = spool_plan(72.0);
  // Square to the face of the right flange, in parallel: beside the spool's bore, the wind's end, a ring from 25 mm on, and
  // around it the left flange's inner face, up to 35 mm.
  const std::string along = "--view right --parallel --plain --transparent --size 600x600 ";
  const auto share_of = [](const PictureFile& picture, double from_mm, double to_mm, const auto& is) {
    const double px_mm = 70.0 / (0.94 * picture.height);
    int all = 0, are = 0;
    for (int y = 0; y < picture.height; ++y)
      for (int x = 0; x < picture.width; ++x) {
        const double r = std::hypot(x + 0.5 - 0.5 * picture.width, y + 0.5 - 0.5 * picture.height) * px_mm;
        if (r < from_mm || r > to_mm) continue;
        ++all;
        are += is(picture.at(x, y)) ? 1 : 0;
      }
    return static_cast<double>(are) / all;
  };
  const PictureFile picture = picture_of(shop, plan, along);
  CHECK(share_of(picture, 25.2, 26.6, is_coloured) > 0.35);
  const auto is_solid = [](const Pixel& pixel) { return pixel.a > 250; };
  CHECK(share_of(picture, 28.0, 34.0, is_solid) > 0.95);
  CHECK(share_of(picture_of(shop, plan, along + "--see-through"), 28.0, 34.0, is_solid) < 0.1);
}

TEST_CASE("across: only the fiber between two places is seen") {
  const Workshop shop;
  const SceneSource source = source_of(shop, spool_plan(72.0));
  View view = askew(source, 360, 300);
  view.x_from_mm = 3.0;
  view.x_to_mm = 7.0;
  CHECK(agreement(picture_of(shop, spool_plan(72.0), same_askew + "--across 3:7"), source, view) > 0.94);
  CHECK(agreement(picture_of(shop, spool_plan(72.0), same_askew + "--across 1:5"), source, view) < 0.8);
}

TEST_CASE("section: the first layer lies half a fiber above the barrel") {
  const Workshop shop;
  // Cut at angle 0, the face looks at a viewer from the side, and its height in the picture is its radius.
  const auto first_layer_mm = [&](const PictureFile& picture) {
    const double px_mm = px_mm_of(picture);
    double sum = 0.0;
    int count = 0;
    for (int y = 0; y < picture.height / 2; ++y)
      for (int x = 0; x < picture.width; ++x)
        if (layer_colour_at(picture.at(x, y), 4) == 0) {
          sum += (0.5 * picture.height - (y + 0.5)) * px_mm;
          ++count;
        }
    REQUIRE(count > 100);
    return sum / count;
  };
  const std::string cut = side + "--section 0";
  CHECK(first_layer_mm(picture_of(shop, spool_plan(72.0), cut)) == Approx(25.25).margin(0.06));
  CHECK_FALSE(first_layer_mm(picture_of(shop, spool_plan(72.0, "left", 50.4), cut)) == Approx(25.25).margin(0.06));
}

TEST_CASE("transparent: what is not clear is the projection of spool and wind") {
  const Workshop shop;
  const auto area_mm2 = [&](const PictureFile& picture) {
    const double px = px_mm_of(picture);
    int count = 0;
    // Beside the spool stand its axis and the mark of angle 0.
    const double from = 0.5 * picture.width - (0.5 * width_mm + flange_mm) / px;
    for (int y = 0; y < picture.height; ++y)
      for (int x = static_cast<int>(from); x < picture.width - static_cast<int>(from); ++x) {
        const double off_axis = std::abs(y + 0.5 - 0.5 * picture.height) * px;
        count += off_axis < 0.5 * rim_mm && picture.at(x, y).a > 127 ? 1 : 0;
      }
    return count * px * px;
  };
  // One layer: its silhouette lies between the line through the centres and that through the crests; taken at the mean of
  // round fiber, d/2 pi/4 above the centres, and at the barrel where the layer ends short of the flanges.
  const double wound = 2.0 * (25.25 + 0.25 * std::numbers::pi / 4.0);
  const double expected = 2.0 * flange_mm * rim_mm + width_mm * wound;
  CHECK(area_mm2(picture_of(shop, spool_plan(18.0), side)) == Approx(expected).epsilon(0.004));
  CHECK_FALSE(area_mm2(picture_of(shop, spool_plan(18.0, "left", 52.0), side)) == Approx(expected).epsilon(0.004));
}

TEST_CASE("colouring by length: a layer goes through the colours once, from where it begins") {
  const Workshop shop;
  // Share of viridis that a place shows, whatever the light: the nearest direction in linear light.
  const auto share_at = [](const PictureFile& picture, double along) {
    const double px_mm = px_mm_of(picture);
    const int x = static_cast<int>(0.5 * picture.width + (along - 0.5) * width_mm / px_mm);
    std::array<double, 3> seen{};
    for (int dx = -6; dx <= 6; ++dx) {
      const Pixel& pixel = picture.at(x + dx, picture.height / 2);
      const std::array<double, 3> here{std::pow(pixel.r, 2.0), std::pow(pixel.g, 2.0), std::pow(pixel.b, 2.0)};
      for (std::size_t i = 0; i < 3; ++i) seen[i] += here[i];
    }
    double best = -1.0, best_share = 0.0;
    for (int i = 0; i <= 100; ++i) {
      const Rgba c = viridis(i / 100.0);
      const std::array<double, 3> pure{std::pow(c.r, 2.0), std::pow(c.g, 2.0), std::pow(c.b, 2.0)};
      const double cosine = (seen[0] * pure[0] + seen[1] * pure[1] + seen[2] * pure[2]) /
                            std::hypot(pure[0], pure[1], pure[2]) / std::hypot(seen[0], seen[1], seen[2]);
      if (cosine <= best) continue;
      best = cosine;
      best_share = i / 100.0;
    }
    return best_share;
  };
  const auto goes_to_the_right = [&](const PictureFile& picture) {
    // 18 turns of pi 50.5 mm are 2.86 m; the scale ends at a round figure at or a little beyond.
    bool fits = true;
    for (const double along : {0.2, 0.4, 0.6, 0.8}) fits = fits && std::abs(share_at(picture, along) - along) < 0.12;
    return fits;
  };
  CHECK(goes_to_the_right(picture_of(shop, spool_plan(18.0), side + "--colour length")));
  CHECK_FALSE(goes_to_the_right(picture_of(shop, spool_plan(18.0, "right"), side + "--colour length")));
  CHECK_FALSE(goes_to_the_right(picture_of(shop, spool_plan(18.0), side)));
}

TEST_CASE("findings: gaps are lit as wide as they are") {
  const Workshop shop;
  // Seven turns of 0.5 mm, 1.2 mm apart: of a pitch, 0.7 mm are gap.
  std::string loose = spool_plan(7.0);
  loose.replace(loose.find("0.53 mm"), 7, "1.20 mm");
  loose.replace(loose.find("friction = 0.5"), 14, "friction = \"held\"");
  const std::string one_layer = side + "--layers 1:1 ";
  const PictureFile plain = picture_of(shop, loose, one_layer),
                    marked = picture_of(shop, loose, one_layer + "--findings");
  const double px_mm = px_mm_of(plain);
  // Along the middle of the picture, three pitches: what the findings make yellower by much.
  const auto lit_share = [&](const PictureFile& with, const PictureFile& without) {
    const int from = static_cast<int>(0.5 * with.width - 1.8 / px_mm),
              to = static_cast<int>(0.5 * with.width + 1.8 / px_mm);
    int lit = 0;
    for (int x = from; x < to; ++x) {
      const Pixel &a = with.at(x, with.height / 2), &b = without.at(x, with.height / 2);
      const int yellow_with = (a.r + a.g) / 2 - a.b, yellow_without = (b.r + b.g) / 2 - b.b;
      lit += yellow_with - yellow_without > 60 ? 1 : 0;
    }
    return static_cast<double>(lit) / (to - from);
  };
  CHECK(lit_share(marked, plain) == Approx(0.7 / 1.2).margin(0.06));
  // Where a gap must be wider than 2 d to be one, none is.
  const PictureFile none = picture_of(shop, loose + "[limits]\ngap = 2.0\n", one_layer + "--findings");
  CHECK(lit_share(none, plain) < 0.05);
}

TEST_CASE("a finding's picture has its ring where its place is") {
  const Workshop shop;
  std::string loose = spool_plan(7.0);
  loose.replace(loose.find("0.53 mm"), 7, "1.20 mm");
  const SceneSource source = source_of(shop, loose);
  View view;
  view.width_px = 1280;
  view.height_px = 720;
  view.dimensions = false;
  view.findings = true;
  view.camera.azimuth_deg = 24.0;
  view.camera.elevation_deg = 16.0;
  view.camera = fit_camera(source.plan(), view);
  view = view_of_finding(source, view, 0);
  const auto place = in_picture(view, mark_of(source, view, 0).spots.front().place);
  REQUIRE(place);
  // Its colour is light and its rim therefore dark.
  const auto has_ring = [&](const PictureFile& picture) {
    int dark = 0;
    for (int i = 0; i < 72; ++i) {
      const double angle = std::numbers::pi * i / 36.0;
      int darkest = 255;
      for (double radius = 5.0; radius < 16.0; radius += 0.5) {
        const Pixel& p = picture.at(static_cast<int>(place->x + radius * std::cos(angle)),
                                    static_cast<int>(place->y + radius * std::sin(angle)));
        darkest = std::min<int>(darkest, std::max({p.r, p.g, p.b}));
      }
      dark += darkest < 110 ? 1 : 0;
    }
    return dark > 64;
  };
  const std::string size = " --size 1280x720 --plain";
  CHECK(has_ring(picture_of(shop, loose, "--finding 1" + size)));
  CHECK_FALSE(has_ring(picture_of(shop, loose, size)));
  CHECK_FALSE(has_ring(picture_of(shop, loose, "--findings" + size)));
}

TEST_CASE("guide: the free fiber goes from the lay point to where the plan's guide is") {
  const Workshop shop;
  const SceneSource source = source_of(shop, spool_plan(18.0));
  const GuidePose pose = guide_pose(source, 8.75);
  View view;
  view.width_px = 800;
  view.height_px = 600;
  view.camera.azimuth_deg = 0.0;
  view.camera.elevation_deg = 0.0;
  view.camera.projection = Projection::parallel;
  view.dimensions = false;
  view.camera = fit_camera(source.plan(), view);
  // The guide's x by hand: 0.26 mm and 8.75 pitches of 0.53 mm.
  const double guide_x = 0.26 + 8.75 * 0.53;
  CHECK(pose.fiber_end.x == Approx(guide_x).margin(1e-6));
  // At three quarters of a turn the lay point is at the back, and the fiber goes up from there, behind the wind, to 50 mm
  // above the axis (the free length): beyond the picture. It is seen above the flanges' rim.
  const double above_mm = 36.0;
  const double share = above_mm / 50.0;
  const double x_there = pose.lay_point.x + share * (guide_x - pose.lay_point.x);
  const auto at = in_picture(view, {x_there, above_mm, 0.0});
  REQUIRE(at);
  const auto is_inked = [&](const PictureFile& picture) {
    bool inked = false;
    for (int dx = -2; dx <= 2; ++dx) {
      inked = inked || picture.at(static_cast<int>(at->x) + dx, static_cast<int>(at->y)).a > 60;
    }
    return inked;
  };
  CHECK(is_inked(picture_of(shop, spool_plan(18.0), side + "--until 8.75 --guide")));
  CHECK_FALSE(is_inked(picture_of(shop, spool_plan(18.0), side + "--until 8.75")));
  CHECK_FALSE(is_inked(picture_of(shop, spool_plan(18.0), side + "--until 8.25 --guide")));
}

TEST_CASE("what is marked on fiber behind the face of a cut does not show through it") {
  const Workshop shop;
  // Piled edges: much is marked in the depth. The finding's picture has the face of a cut in its lower half; no fiber and no
  // barrel is white there, but the rims of lines are.
  const PictureFile picture = picture_of(shop, content(LAYWRIGHT_SOURCE_DIR "/samples/turns-back-late.lay.toml"),
                                         "--finding 3 --plain --size 1280x720");
  int white = 0, fiber = 0;
  for (int y = 400; y < 540; ++y) {
    for (int x = 170; x < picture.width; ++x) {
      const Pixel& p = picture.at(x, y);
      white += std::min({p.r, p.g, p.b}) > 145 ? 1 : 0;
      fiber += is_coloured(p) ? 1 : 0;
    }
  }
  CHECK(fiber > 100'000);
  CHECK(white < 5);
}
