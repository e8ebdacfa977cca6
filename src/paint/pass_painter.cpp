#include "paint/pass_painter.h"

#include <array>
#include <chrono>
#include <cmath>

#include "render/overlay.h"

namespace laywright {
namespace {

using Clock = std::chrono::steady_clock;

double ms_since(Clock::time_point begin) {
  return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

// Where in a pixel the fine passes look, in sixteenths from its middle: no two in a row or column of 8 x 8, the first
// four in four quarters, and even on the whole.
constexpr std::array<std::array<float, 2>, 8> places{
    {{1, -3}, {-1, 3}, {5, 1}, {-3, -5}, {-5, 5}, {-7, -1}, {3, 7}, {7, -7}}};
constexpr int fine_passes = static_cast<int>(places.size());

// After which a mean is worth showing. On a graphics card only the last betters the quick picture; of a processor, which
// makes that one coarse, the first is sharp, the fourth smooth, the last smoother.
bool is_shown(Drawer drawer, int pass) {
  return pass == fine_passes || (drawer == Drawer::processor && (pass == 1 || pass == 4));
}

// How long a quick picture with its words may take, and how coarse it may become for that.
struct Quickness {
  double wanted_ms, coarsest, first;
};
constexpr Quickness quickness_of(Drawer drawer) {
  return drawer == Drawer::processor ? Quickness{10.0, 0.4, 0.75} : Quickness{4.0, 1.0, 1.5};
}

// The finest that a picture is drawn, in one direction: a graphics card draws two for one, up to so many pixels.
constexpr double card_pixels = 40e6;
double finest_scale(Drawer drawer, const View& view) {
  if (drawer == Drawer::processor) return 1.0;
  return 4.0 * view.width_px * view.height_px <= card_pixels ? 2.0 : 1.0;
}

}  // namespace

PassPainter::PassPainter(Drawer drawer)
    : drawer_(drawer),
      renderer_(false),
      finish_(drawer == Drawer::processor ? memory_finish() : texture_finish()),
      scale_(quickness_of(drawer).first) {}

PassDone PassPainter::paint(const PaintOrder& order, int pass, FinishedPicture& picture) {
  load(order);
  if (pass == 0) {
    paint_quickly(order, picture);
    return {true, false};
  }
  add_fine(order, pass);
  const bool shown = is_shown(drawer_, pass);
  if (shown) {
    finish_->hand_over(theme_colours(order.scene->theme), picture);
  } else {
    glFinish();  // so that no pass hides behind another
  }
  return {shown, pass >= fine_passes};
}

void PassPainter::load(const PaintOrder& order) {
  if (loaded_ == order) return;
  if (loaded_.scene != order.scene) renderer_.load(*order.scene);
  if (loaded_.scene != order.scene || loaded_.close_up != order.close_up)
    renderer_.load(*order.close_up, *order.scene);
  write_words(order);
  loaded_ = order;
}

void PassPainter::write_words(const PaintOrder& order) {
  const Clock::time_point begin = Clock::now();
  const int width = order.view.width_px, height = order.view.height_px;
  if (canvas_ && canvas_->width() == width && canvas_->height() == height) {
    canvas_->clear();
  } else {
    canvas_.emplace(width, height);
  }
  OverlaySettings settings;
  settings.text_scale = order.text_scale;
  settings.legend = settings.scale_bar = order.scene->explained;
  draw_overlay(*canvas_, *order.scene, order.view, settings);
  finish_->take_words(*canvas_);
  words_ms_ = ms_since(begin);
}

double PassPainter::quick_scale(const View& view) const { return std::min(scale_, finest_scale(drawer_, view)); }

// Half way to what would have taken as long as it should: one slow frame says little.
void PassPainter::learn(double quick_ms, const View& view) {
  const Quickness quickness = quickness_of(drawer_);
  const double wanted = scale_ * std::sqrt(quickness.wanted_ms / std::max(quick_ms, 0.1));
  scale_ = std::clamp(0.5 * (scale_ + wanted), quickness.coarsest, finest_scale(drawer_, view));
}

Frame PassPainter::frame_of(const PaintOrder& order, int width, int height) const {
  return make_frame(*order.scene, order.view, sphere_around(order.source->plan()), width, height);
}

void PassPainter::draw(const PaintOrder& order, const Frame& frame) {
  // One size for quick and fine frames, so that it need not be made anew between them.
  const int finest = static_cast<int>(finest_scale(drawer_, order.view));
  raw_.fit(finest * order.view.width_px, finest * order.view.height_px, four_bytes, true);
  FrameStyle style;
  style.transparent = finish_->lays_ground();
  glBindFramebuffer(GL_FRAMEBUFFER, raw_.framebuffer.name());
  glScissor(0, 0, frame.width, frame.height);
  glEnable(GL_SCISSOR_TEST);
  renderer_.draw_into(frame, style);
  glDisable(GL_SCISSOR_TEST);
}

void PassPainter::paint_quickly(const PaintOrder& order, FinishedPicture& picture) {
  const Clock::time_point begin = Clock::now();
  const double scale = quick_scale(order.view);
  const int width = std::max(1, static_cast<int>(std::lround(order.view.width_px * scale)));
  const int height = std::max(1, static_cast<int>(std::lround(order.view.height_px * scale)));
  Frame frame = frame_of(order, width, height);
  frame.coarse = drawer_ == Drawer::processor;
  draw(order, frame);
  finish_->take_quick(raw_, {width, height});
  finish_->hand_over(theme_colours(order.scene->theme), picture);
  learn(words_ms_ + ms_since(begin), order.view);
}

void PassPainter::add_fine(const PaintOrder& order, int pass) {
  const auto& place = places[static_cast<std::size_t>(pass - 1)];
  Frame frame = frame_of(order, order.view.width_px, order.view.height_px);
  // The first stands for a while by itself: finer than its pixels it would flicker.
  frame.detail = pass == 1 ? 1.0F : 2.0F;
  frame.dither.y = (static_cast<float>(pass) - 0.5F) / static_cast<float>(fine_passes);
  draw(order, moved(frame, glm::vec2(place[0], place[1]) / 16.0F));
  finish_->take_fine(raw_, pass);
}

}  // namespace laywright
