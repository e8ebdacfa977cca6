// Words over the picture keep clear of the spool and stay in the picture.
#include <catch2/catch.hpp>

#include "render/laid_scene.h"
#include "render/overlay.h"
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
