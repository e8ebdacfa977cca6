// Words over the picture keep clear of the spool and stay in the picture.
#include <catch2/catch.hpp>

#include "render/laid_scene.h"
#include "render/overlay.h"
#include "render/overlay_parts.h"
#include "render/overlay_shade.h"

using namespace laywright;

namespace {

View fitted(const SceneSource& source, int width, int height) {
  View view;
  view.width_px = width;
  view.height_px = height;
  view.camera = fit_camera(source.plan(), view);
  return view;
}

bool is_drawn(const Canvas& canvas, int x, int y) {
  const unsigned char* pixel =
      canvas.data() +
      4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(canvas.width()) + static_cast<std::size_t>(x));
  return pixel[3] > 8;
}

// Share of the spool's projection that is written over.
double written_over(const Scene& scene, const View& view, const OverlaySettings& settings) {
  Canvas canvas(view.width_px, view.height_px);
  draw_overlay(canvas, scene, view, settings);
  const SpoolShade shade(scene, view);
  int spool = 0, written = 0;
  for (int y = 0; y < view.height_px; y += 2)
    for (int x = 0; x < view.width_px; x += 2) {
      if (!shade.covers({x + 0.5, y + 0.5})) continue;
      ++spool;
      written += is_drawn(canvas, x, y) ? 1 : 0;
    }
  return static_cast<double>(written) / spool;
}

}  // namespace

TEST_CASE("what the spool covers is its projection") {
  const SceneSource source = small_source();
  View view = fitted(source, 800, 600);
  view.camera.projection = Projection::parallel;
  view.camera.azimuth_deg = view.camera.elevation_deg = 0.0;
  view.camera = fit_camera(source.plan(), view);
  const Scene scene = make_scene(source, view);
  const SpoolShade shade(scene, view);
  const Spool& spool = source.plan().spool();
  const double wide =
      (spool.inside_width_mm + 2.0 * flange_thickness_share * spool.flange_diameter_mm) / mm_per_px(view);
  const double high = spool.flange_diameter_mm / mm_per_px(view);
  CHECK(shade.high().x - shade.low().x == Approx(wide).epsilon(1e-3));
  CHECK(shade.high().y - shade.low().y == Approx(high).epsilon(1e-3));
  CHECK(shade.under({390.0, 290.0}, {20.0, 20.0}) == 1.0);
  CHECK(shade.under({0.0, 0.0}, {20.0, 20.0}) == 0.0);
  CHECK(shade.under({shade.low().x - 10.0, 290.0}, {20.0, 20.0}) == Approx(0.5).margin(0.09));
}

TEST_CASE("the legend leaves the spool free, in wide pictures and in narrow ones") {
  const SceneSource source = small_source();
  OverlaySettings legend_alone;
  legend_alone.scale_bar = false;
  for (const auto& [width, height] : {std::pair{1280, 800}, {800, 600}, {500, 500}, {420, 800}, {300, 600}}) {
    for (const Colouring colouring : {Colouring::layer, Colouring::height}) {
      View view = fitted(source, width, height);
      view.dimensions = false;
      view.findings = false;
      view.colouring = colouring;
      view.camera = fit_camera(source.plan(), view);
      INFO(width << "x" << height);
      CHECK(written_over(make_scene(source, view), view, legend_alone) < 0.03);
    }
  }
}

TEST_CASE("a legend that the view leaves out is not there, and all else is as it was") {
  const SceneSource source = small_source();
  OverlaySettings legend_alone;
  legend_alone.scale_bar = false;
  View view = fitted(source, 800, 600);
  view.dimensions = view.findings = false;
  Scene scene = make_scene(source, view);
  scene.explained = false;  // no lay point
  const auto drawn = [&](const OverlaySettings& settings) {
    Canvas canvas(view.width_px, view.height_px);
    draw_overlay(canvas, scene, view, settings);
    int count = 0;
    for (int y = 0; y < view.height_px; ++y)
      for (int x = 0; x < view.width_px; ++x) count += is_drawn(canvas, x, y) ? 1 : 0;
    return count;
  };
  const int with_scale = drawn({});
  REQUIRE(drawn(legend_alone) > 0);
  view.legend = false;
  CHECK(drawn(legend_alone) == 0);
  CHECK(drawn({}) > 0);  // the scale bar
  CHECK(drawn({}) < with_scale);
}

TEST_CASE("no word of a dimension is cut off by the picture's edge") {
  const SceneSource source = small_source();
  OverlaySettings nothing_else;
  nothing_else.legend = nothing_else.scale_bar = false;
  for (const auto& [width, height] : {std::pair{1280, 800}, {500, 500}, {300, 600}, {240, 700}, {900, 200}}) {
    for (const double azimuth : {0.0, 30.0, -40.0}) {
      View view = fitted(source, width, height);
      view.findings = false;
      view.camera.azimuth_deg = azimuth;
      view.camera = fit_camera(source.plan(), view);
      const Scene scene = make_scene(source, view);
      REQUIRE(scene.dimensions.size() == 3);
      Canvas canvas(width, height);
      draw_overlay(canvas, scene, view, nothing_else);
      INFO(width << "x" << height << " from " << azimuth);
      int at_edge = 0;
      const auto look = [&](int x, int y) {
        if (!is_drawn(canvas, x, y)) return;
        ++at_edge;
        UNSCOPED_INFO("drawn at " << x << ", " << y);
      };
      for (int x = 0; x < width; ++x) look(x, 0), look(x, height - 1);
      for (int y = 0; y < height; ++y) look(0, y), look(width - 1, y);
      CHECK(at_edge == 0);
    }
  }
}

TEST_CASE("a long title ends before the picture does") {
  const SceneSource source = small_source();
  const View view = fitted(source, 400, 300);
  const Scene scene = make_scene(source, view);
  OverlaySettings settings;
  settings.legend = settings.scale_bar = false;
  settings.title = std::string(100, 'W');
  Canvas canvas(view.width_px, view.height_px);
  draw_overlay(canvas, scene, view, settings);
  int middle = 0, edge = 0;
  for (int y = 0; y < 60; ++y) {
    middle += is_drawn(canvas, 200, y) ? 1 : 0;
    edge += is_drawn(canvas, 399, y) ? 1 : 0;
  }
  CHECK(middle > 10);
  CHECK(edge == 0);
}

namespace {

// All that draw_overlay takes of a picture but the legend.
OverlayRoom taken_by(const Scene& scene, const View& view, double unit) {
  Canvas canvas(view.width_px, view.height_px);
  OverlayStyle style;
  style.unit = unit;
  OverlayRoom taken;
  draw_dimension_lines(canvas, scene, view, SpoolShade(scene, view), style, taken);
  return taken;
}

}  // namespace

TEST_CASE("boxes and lines: what meets what") {
  CHECK(cross({{0, 0}, {2, 2}}, {{0, 2}, {2, 0}}));
  CHECK_FALSE(cross({{0, 0}, {1, 1}}, {{0, 4}, {4, 0}}));
  const OverlayBox box{{1, 1}, {2, 2}};
  CHECK(crosses({{0, 2}, {5, 2}}, box));
  CHECK(crosses({{2, 2}, {2.5, 2.5}}, box));
  CHECK_FALSE(crosses({{0, 0}, {5, 0}}, box));
  CHECK(overlap(box, {{2.5, 2.5}, {4, 4}}));
  CHECK_FALSE(overlap(box, {{3.5, 0}, {4, 4}}));
  OverlayRoom room;
  CHECK_FALSE(room.meets(box));
  room.signs.push_back({2, 2});
  CHECK(room.signs_in(box) == 1);
  room.words.push_back({{0, 0}, {1.5, 1.5}});
  CHECK(room.meets(box));
}

TEST_CASE("a line goes on outside boxes alone") {
  const auto share = [](const OverlayLine& line, const std::vector<OverlayBox>& boxes) {
    double length = 0.0;
    for (const OverlayLine& part : parts_outside(line, boxes)) length += glm::distance(part.from, part.to);
    return length / glm::distance(line.from, line.to);
  };
  const OverlayLine level{{0, 0}, {10, 0}};
  const OverlayBox middle{{4, -1}, {2, 2}};
  REQUIRE(parts_outside(level, {middle}).size() == 2);
  CHECK(parts_outside(level, {middle})[0].to.x == Approx(4.0));
  CHECK(parts_outside(level, {middle})[1].from.x == Approx(6.0));
  CHECK(share(level, {}) == Approx(1.0));
  CHECK(share(level, {{{4, 1}, {2, 2}}}) == Approx(1.0));
  CHECK(share(level, {{{-1, -1}, {20, 2}}}) == Approx(0.0).margin(1e-12));
  CHECK(share(level, {middle, {{5, -1}, {3, 2}}, {{9, -1}, {4, 2}}}) == Approx(0.5));
  // Through two corners: half of the diagonal.
  CHECK(share({{0, 0}, {4, 4}}, {{{1, 1}, {2, 2}}}) == Approx(0.5));
}

TEST_CASE("the ground of a dimension's words shows no line behind them") {
  const SceneSource source = small_source();
  View view = fitted(source, 1280, 800);
  view.findings = false;
  Scene scene = make_scene(source, view);
  // Without letters, all that is drawn in a box is its ground, of one opacity.
  for (DimensionLine& line : scene.dimensions) line.text = std::string(12, ' ');
  Canvas canvas(view.width_px, view.height_px);
  OverlayRoom taken;
  draw_dimension_lines(canvas, scene, view, SpoolShade(scene, view), OverlayStyle{}, taken);
  REQUIRE(taken.words.size() == 3);
  for (const OverlayBox& box : taken.words) {
    const auto pixel = [&](double across, double down) {
      const auto x = static_cast<std::size_t>(box.corner.x + across * box.size.x);
      const auto y = static_cast<std::size_t>(box.corner.y + down * box.size.y);
      return canvas.data() + 4 * (y * 1280 + x);
    };
    int differ = 0;
    for (double across = 0.1; across < 0.91; across += 0.01)
      for (double down = 0.15; down < 0.86; down += 0.02)
        differ += !std::equal(pixel(across, down), pixel(across, down) + 4, pixel(0.5, 0.3));
    CHECK(differ == 0);
  }
}

TEST_CASE("dimension lines cross neither words nor each other, and the legend lies over none of them") {
  const SceneSource source = small_source();
  for (const auto& [width, height] : {std::pair{1280, 800}, {1280, 720}, {800, 600}, {1920, 1080}}) {
    for (const double azimuth : {0.0, 24.0, 40.0, -30.0}) {
      for (const double elevation : {0.0, 16.0, -20.0}) {
        View view = fitted(source, width, height);
        view.camera.azimuth_deg = azimuth;
        view.camera.elevation_deg = elevation;
        view.camera = fit_camera(source.plan(), view);
        const Scene scene = make_scene(source, view);
        INFO(width << "x" << height << " from " << azimuth << ", " << elevation);
        const OverlayRoom taken = taken_by(scene, view, std::min(width / 1280.0, height / 720.0));
        REQUIRE(taken.words.size() >= 2);
        for (std::size_t i = 0; i < taken.lines.size(); ++i)
          for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(cross(taken.lines[i], taken.lines[j]));
        for (std::size_t i = 0; i < taken.words.size(); ++i)
          for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(overlap(taken.words[i], taken.words[j]));
        // With and without the legend, a dimension's words are the same pixels.
        OverlaySettings without;
        without.legend = without.scale_bar = false;
        OverlaySettings with = without;
        with.legend = true;
        Canvas bare(width, height), told(width, height);
        draw_overlay(bare, scene, view, without);
        draw_overlay(told, scene, view, with);
        int changed = 0;
        for (const OverlayBox& box : taken.words)
          for (int y = static_cast<int>(box.corner.y); y < static_cast<int>(box.corner.y + box.size.y); ++y)
            for (int x = static_cast<int>(box.corner.x); x < static_cast<int>(box.corner.x + box.size.x); ++x) {
              const std::size_t at =
                  4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x));
              changed += bare.data()[at] != told.data()[at] ? 1 : 0;
            }
        CHECK(changed == 0);
      }
    }
  }
}

TEST_CASE("on a phone, too, the words of a dimension leave both its arrows and all other words free") {
  // The picture of a page on a screen of 390 x 844, of two pixels each way, and its letters.
  constexpr double unit = 1.7;
  const SceneSource source = small_source();
  for (const int height : {640, 760, 900}) {
    for (const double azimuth : {0.0, 24.0, 30.0, -30.0, 50.0}) {
      for (const double elevation : {0.0, 16.0, 20.0}) {
        View view = fitted(source, 780, height);
        view.camera.azimuth_deg = azimuth;
        view.camera.elevation_deg = elevation;
        view.camera = fit_camera(source.plan(), view);
        const Scene scene = make_scene(source, view);
        INFO("780x" << height << " from " << azimuth << ", " << elevation);
        const OverlayRoom taken = taken_by(scene, view, unit);
        REQUIRE(taken.words.size() >= 2);
        REQUIRE(taken.arrows.size() >= taken.words.size());
        for (const OverlayBox& words : taken.words) {
          CHECK(words.corner.x >= 0.0);
          CHECK(words.corner.y >= 0.0);
          CHECK(words.corner.x + words.size.x <= 780.0);
          for (const OverlayBox& arrow : taken.arrows) CHECK_FALSE(overlap(words, arrow));
        }
        for (std::size_t i = 0; i < taken.words.size(); ++i)
          for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(overlap(taken.words[i], taken.words[j]));
      }
    }
  }
}
