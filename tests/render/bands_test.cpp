// A frame drawn band by band, so that somebody who waits can see how far it is, and stop it.
#include <algorithm>
#include <vector>

#include <catch2/catch.hpp>

#include "paint/offscreen_context.h"
#include "paint/png.h"
#include "render/frame_target.h"
#include "render/laid_scene.h"
#include "render/overlay.h"
#include "render/scene_renderer.h"

using namespace laywright;

TEST_CASE("a picture drawn in bands is the same picture, tells how far it is, and stops where it is told to") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const SceneSource source = small_source();
  View view;
  view.width_px = 640;
  view.height_px = 500;
  view.wedge = Sector{0.5, 1.6};
  view.camera = fit_camera(source.plan(), view);
  const Scene scene = make_scene(source, view);
  Canvas canvas(view.width_px, view.height_px);
  draw_overlay(canvas, scene, view);
  FrameStyle style;
  style.overlay = &canvas;
  SceneRenderer renderer;
  renderer.load(scene);
  renderer.load(make_close_up(source, scene, view), scene);
  const FrameTarget target(view.width_px, view.height_px, 4);
  const Sphere sphere = sphere_around(source.plan());
  CHECK(renderer.draw(target, scene, view, sphere, style));
  const std::vector<std::uint8_t> whole = target.read().bytes;

  std::vector<double> shares;
  CHECK(renderer.draw(target, scene, view, sphere, style, [&](double share) {
    shares.push_back(share);
    return true;
  }));
  CHECK((target.read().bytes == whole));
  CHECK(shares.size() >= 3);
  CHECK(std::is_sorted(shares.begin(), shares.end()));
  CHECK(shares.front() < 0.5);
  CHECK(shares.back() == 1.0);

  int asked = 0;
  CHECK_FALSE(renderer.draw(target, scene, view, sphere, style, [&](double) { return ++asked < 2; }));
  CHECK(asked == 2);
}

TEST_CASE("packing a picture ends where it is told to") {
  const Image image{300, 200, std::vector<std::uint8_t>(300U * 200U * 4U, 255)};
  int asked = 0;
  CHECK(to_png(image, [&] { return ++asked < 1000; }).size() > 100);
  CHECK(asked > 1);
  asked = 0;
  CHECK(to_png(image, [&] { return ++asked < 2; }).empty());
  CHECK(asked == 2);
}
