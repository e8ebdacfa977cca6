// The painter with a real OpenGL of its own, on its thread and without one.
#include <catch2/catch.hpp>

#include <atomic>
#include <cmath>
#include <optional>
#include <thread>

#include "jobs/no_more_threads.h"
#include "paint/offscreen_context.h"
#include "paint/painter.h"
#include "render/laid_scene.h"
#include "render/overlay.h"

using namespace laywright;

namespace {

PaintOrder order_of(const std::shared_ptr<const SceneSource>& source, double azimuth_deg, bool near = false) {
  PaintOrder order;
  order.view.width_px = 320;
  order.view.height_px = 200;
  order.view.camera = fit_camera(source->plan(), order.view);
  if (near) order.view.camera.distance_mm /= 6.0;
  order.view.camera.azimuth_deg = azimuth_deg;
  order.source = source;
  auto scene = std::make_shared<Scene>(make_scene(*source, order.view));
  order.close_up = std::make_shared<CloseUp>(make_close_up(*source, *scene, order.view));
  order.scene = std::move(scene);
  return order;
}

PaintContext offscreen() {
  const auto held = std::make_shared<std::optional<OffscreenContext>>();
  return {[held] {
            auto opened = OffscreenContext::open();
            if (opened.ok()) *held = std::move(opened).value();
            return held->has_value();
          },
          [held] { held->reset(); }};
}

template <class Test>
bool soon(const Test& test) {
  for (int i = 0; i < 12'000; ++i) {
    if (test()) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
  }
  return false;
}

double mean_difference(const std::vector<std::uint8_t>& a, const std::vector<std::uint8_t>& b) {
  if (a.size() != b.size()) return 1e9;
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += std::abs(a[i] - b[i]);
  return sum / static_cast<double>(std::max<std::size_t>(a.size(), 1));
}

// Rows from below to above, as a finished has them.
std::vector<std::uint8_t> as_on_a_sheet(const std::vector<std::uint8_t>& bytes, int width) {
  const std::size_t row = 4 * static_cast<std::size_t>(width);
  std::vector<std::uint8_t> turned;
  for (std::size_t y = bytes.size() / row; y-- > 0;)
    turned.insert(turned.end(), &bytes[y * row], &bytes[y * row] + row);
  return turned;
}

}  // namespace

TEST_CASE("a painter's thread paints the newest order until it is fine, wakes the window, and then rests") {
  const auto source = std::make_shared<const SceneSource>(small_source());
  std::atomic<int> woken = 0;
  Painter painter(
      offscreen(), [&] { ++woken; }, Drawer::processor);
  const std::size_t picture = painter.add(), other = painter.add();
  CHECK(painter.newest(picture) == nullptr);
  for (int i = 0; i <= 20; ++i) painter.want(picture, order_of(source, 10.0 + i));
  painter.want(other, order_of(source, 80.0, true));
  REQUIRE(soon([&] { return !painter.unfinished(picture) && !painter.unfinished(other); }));
  CHECK(painter.trouble().empty());
  const FinishedPicture* const finished = painter.newest(picture);
  REQUIRE(finished != nullptr);
  CHECK(finished->width == 320);
  REQUIRE(finished->bytes.size() == 320U * 200U * 4U);
  const auto passes = painter.times().passes;
  const int wakes = woken;
  CHECK(wakes >= 2);
  CHECK(passes < 22 * 9);

  // The same again: nothing is painted.
  const std::vector<std::uint8_t> bytes = finished->bytes;
  painter.remove(other);
  std::this_thread::sleep_for(std::chrono::milliseconds(300));
  CHECK(painter.times().passes == passes);
  CHECK(woken == wakes);

  // It is the newest order's picture: one painted by itself is the same, one of an order before is not.
  const auto alone = [&](double azimuth_deg) {
    Painter single(
        offscreen(), [] {}, Drawer::processor);
    const std::size_t place = single.add();
    single.want(place, order_of(source, azimuth_deg));
    REQUIRE(soon([&] { return !single.unfinished(place); }));
    return single.newest(place)->bytes;
  };
  CHECK(mean_difference(bytes, alone(30.0)) == 0.0);
  CHECK(mean_difference(bytes, alone(22.0)) > 0.5);
}

TEST_CASE("without a thread a painter works a pass at a time, textures and bytes show the same picture") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const auto source = std::make_shared<const SceneSource>(small_source());
  const auto picture_of = [&](Drawer drawer) {
    Painter painter(
        std::nullopt, [] {}, drawer);
    const std::size_t picture = painter.add();
    painter.want(picture, order_of(source, 40.0));
    CHECK(painter.seconds_to_work() == 0.0);
    painter.work();
    CHECK(painter.times().passes == 1);
    CHECK(painter.seconds_to_work());  // once the picture has stood still
    CHECK(soon([&] {
      painter.work();
      return !painter.unfinished(picture);
    }));
    CHECK_FALSE(painter.seconds_to_work());
    const FinishedPicture& finished = *painter.newest(picture);
    if (!finished.texture) return finished.bytes;
    std::vector<std::uint8_t> bytes(320U * 200U * 4U);
    glBindTexture(GL_TEXTURE_2D, finished.texture.name());
    glGetTexImage(GL_TEXTURE_2D, 0, GL_RGBA, GL_UNSIGNED_BYTE, bytes.data());
    return bytes;
  };
  // They round in other places: no more than that.
  CHECK(mean_difference(picture_of(Drawer::processor), picture_of(Drawer::graphics_card)) < 0.6);
}

TEST_CASE("a painter for whom no thread can be started works where it is asked to") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const NoMoreThreads none;
  Painter painter(
      offscreen(), [] {}, Drawer::processor);
  CHECK_FALSE(painter.has_thread());
  const std::size_t picture = painter.add(), other = painter.add();
  painter.want(picture, order_of(std::make_shared<const SceneSource>(small_source()), 40.0));
  CHECK(painter.seconds_to_work() == 0.0);
  painter.work();
  CHECK(painter.times().passes == 1);
  CHECK(painter.newest(picture) != nullptr);
  painter.remove(other);
  CHECK(painter.trouble().empty());
}

TEST_CASE("a painter that gets no OpenGL says so") {
  Painter painter(
      PaintContext{[] { return false; }, [] {}}, [] {}, Drawer::processor);
  const std::size_t picture = painter.add();
  CHECK(soon([&] { return !painter.trouble().empty(); }));
  CHECK(painter.newest(picture) == nullptr);
  CHECK_FALSE(painter.fresh(picture));
}

TEST_CASE("a settled picture comes at least as near to a very fine one as one drawn twice as fine") {
  const auto context = OffscreenContext::open();
  REQUIRE(context.ok());
  const auto source = std::make_shared<const SceneSource>(small_source());
  for (const bool near : {false, true}) {
    const PaintOrder order = order_of(source, 40.0, near);
    Canvas canvas(order.view.width_px, order.view.height_px);
    OverlaySettings words;
    words.text_scale = order.text_scale;
    draw_overlay(canvas, *order.scene, order.view, words);
    const auto drawn = [&](int factor) {
      SceneRenderer renderer;
      renderer.load(*order.scene);
      renderer.load(*order.close_up, *order.scene);
      const FrameTarget target(order.view.width_px, order.view.height_px, factor);
      FrameStyle style;
      style.overlay = &canvas;
      renderer.draw(target, *order.scene, order.view, sphere_around(source->plan()), style);
      return as_on_a_sheet(target.read().bytes, order.view.width_px);
    };
    PassPainter pass_painter(Drawer::processor);
    FinishedPicture finished;
    for (int pass = 0; !pass_painter.paint(order, pass, finished).finest;) ++pass;
    const std::vector<std::uint8_t> finest = drawn(4);
    CHECK(mean_difference(finished.bytes, finest) <= mean_difference(drawn(2), finest));
    CHECK(mean_difference(drawn(1), finest) > mean_difference(drawn(2), finest));
  }
}
