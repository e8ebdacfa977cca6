#include "app/desktop_picture.h"

#include <algorithm>

namespace laywright {
namespace {

using Milliseconds = std::chrono::duration<double, std::milli>;
constexpr double still_s = 0.15;  // so long after the last move a finer picture is drawn

// Both ask for the same scene: all but the camera and the picture's size. The scale bar alone depends on these, and
// it is drawn from the view.
bool same_scene(const View& a, const View& b) {
  return a.first_layer == b.first_layer && a.last_layer == b.last_layer && a.outside == b.outside &&
         a.until_turn == b.until_turn && a.wedge == b.wedge && a.axial_cut_rad == b.axial_cut_rad &&
         a.x_from_mm == b.x_from_mm && a.x_to_mm == b.x_to_mm && a.colouring == b.colouring &&
         a.findings == b.findings && a.chosen_finding == b.chosen_finding && a.dimensions == b.dimensions &&
         a.flanges_see_through == b.flanges_see_through && a.units == b.units && a.theme == b.theme;
}

bool same_look(const View& a, const View& b) {
  return a.camera == b.camera && a.width_px == b.width_px && a.height_px == b.height_px;
}

}  // namespace

DesktopPicture::DesktopPicture(std::function<void()> wake, bool software)
    : wake_(std::move(wake)), software_(software) {}

DesktopPicture::~DesktopPicture() = default;

void DesktopPicture::show(const WoundPtr& wound, const View& view, double text_scale) {
  if (wound != wound_ || !same_look(view, view_) || text_scale != text_scale_) {
    redraw_ = true;
    moved_at_ = Clock::now();
  }
  wound_ = wound;
  view_ = view;
  text_scale_ = text_scale;
  if (!wound_) return;
  if (wound_ != asked_wound_ || !asked_view_ || !same_scene(*asked_view_, view_)) ask_for_scene();
  take_fresh();
}

// Only the newest is made: a scrubber that is dragged asks faster than scenes are made.
void DesktopPicture::ask_for_scene() {
  asked_wound_ = wound_;
  asked_view_ = view_;
  moved_at_ = Clock::now();
  {
    const std::lock_guard lock(shared_->mutex);
    ++shared_->scenes_waiting;
  }
  worker_.run([wound = wound_, view = view_, shared = shared_, wake = wake_] {
    auto scene = std::make_shared<Scene>(make_scene(wound->source, view));
    auto close_up = std::make_shared<CloseUp>(make_close_up(wound->source, *scene, view));
    {
      const std::lock_guard lock(shared->mutex);
      shared->scenes_waiting = 0;
      shared->fresh = Made{wound, view, std::move(scene), std::move(close_up)};
    }
    wake();
  });
}

void DesktopPicture::ask_for_close_up() {
  {
    const std::lock_guard lock(shared_->mutex);
    if (shared_->scenes_waiting > 0 || shared_->close_ups_waiting > 0) return;
    ++shared_->close_ups_waiting;
  }
  worker_.run([made = *made_, view = view_, shared = shared_, wake = wake_]() mutable {
    made.close_up = std::make_shared<CloseUp>(make_close_up(made.wound->source, *made.scene, view));
    {
      const std::lock_guard lock(shared->mutex);
      shared->close_ups_waiting = 0;
      if (!shared->fresh) shared->fresh = std::move(made);
    }
    wake();
  });
}

void DesktopPicture::take_fresh() {
  std::optional<Made> fresh;
  {
    const std::lock_guard lock(shared_->mutex);
    fresh = std::exchange(shared_->fresh, std::nullopt);
    if (fresh) shared_->close_ups_waiting = 0;
  }
  if (fresh) {
    if (!renderer_) renderer_ = std::make_unique<SceneRenderer>();
    if (!made_ || made_->scene != fresh->scene) renderer_->load(*fresh->scene);
    renderer_->load(*fresh->close_up, *fresh->scene);
    made_ = std::move(fresh);
    redraw_ = true;
  }
  if (made_ && !covers(*made_->close_up, *made_->scene, view_)) ask_for_close_up();
}

int DesktopPicture::factor_now() const {
  const double pixels = static_cast<double>(view_.width_px) * view_.height_px;
  const bool still = std::chrono::duration<double>(Clock::now() - moved_at_).count() >= still_s;
  if (software_ && !still) return 1;
  return pixels * 4.0 <= (software_ ? 6e6 : 40e6) ? 2 : 1;
}

void DesktopPicture::render(int factor) {
  if (!target_ || target_->width() != view_.width_px || target_->height() != view_.height_px ||
      target_->factor() != factor) {
    target_.reset();
    target_ = std::make_unique<FrameTarget>(view_.width_px, view_.height_px, factor);
  }
  Canvas overlay(view_.width_px, view_.height_px);
  OverlaySettings words;
  words.text_scale = text_scale_;
  draw_overlay(overlay, *made_->scene, view_, words);
  FrameStyle style;
  style.overlay = &overlay;
  renderer_->draw(*target_, *made_->scene, view_, sphere_around(made_->wound->plan()), style);
}

bool DesktopPicture::draw(int x, int y) {
  if (!made_ || !wound_) return false;
  const int factor = factor_now();
  if (redraw_ || factor > drawn_factor_) {
    const Clock::time_point begin = Clock::now();
    render(factor);
    last_draw_ms_ = Milliseconds(Clock::now() - begin).count();
    redraw_ = false;
    drawn_factor_ = factor;
  }
  target_->copy_to(0, x, y);
  return true;
}

bool DesktopPicture::stale() const {
  const std::lock_guard lock(shared_->mutex);
  return redraw_ || shared_->fresh.has_value();
}

std::optional<double> DesktopPicture::seconds_to_finer() const {
  if (!made_ || drawn_factor_ >= 2) return std::nullopt;
  const double pixels = static_cast<double>(view_.width_px) * view_.height_px;
  if (pixels * 4.0 > (software_ ? 6e6 : 40e6)) return std::nullopt;
  return std::max(0.0, still_s - std::chrono::duration<double>(Clock::now() - moved_at_).count());
}

bool DesktopPicture::busy() const {
  const std::lock_guard lock(shared_->mutex);
  return shared_->scenes_waiting > 0;
}

std::shared_ptr<const Scene> DesktopPicture::scene() const { return made_ ? made_->scene : nullptr; }

}  // namespace laywright
