#include "app/picture_maker.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/quantity_text.h"
#include "measure/diameter_so_far.h"
#include "render/overlay.h"

namespace laywright {
namespace {

int fineness(const View& view, double most_fine_pixels) {
  const double pixels = static_cast<double>(view.width_px) * view.height_px;
  for (int factor = 4; factor > 1; --factor)
    if (pixels * factor * factor <= most_fine_pixels) return factor;
  return 1;
}

std::string subtitle_of(const SceneSource& source, const View& view, bool tells_diameter) {
  const double turns = std::min(view.until_turn.value_or(source.build().turns), source.build().turns);
  const bool inch = view.units == Units::inch;
  const double length_mm = length_at_turn(source, turns);
  const auto strokes = source.build().strokes.size();
  const std::string layers = view.until_turn ? "" : " in " + counted(strokes, "layer");
  std::string words =
      fmt::format("{} of fiber, {}{}", fiber_text(length_mm, 4, inch), counted(figure(turns, 0), "turn"), layers);
  if (tells_diameter) {
    const double mm = diameter_so_far(source.measurements(), source.plan().spool().barrel_diameter_mm, length_mm);
    words += fmt::format(", {} thick", amount_text(Amount::small_length, mm, 1, inch));
  }
  return words;
}

bool same_but_camera(const View& view, View other) {
  other.camera = view.camera;
  return view == other;
}

}  // namespace

void PictureMaker::load(const View& view) {
  if (view_ && same_but_camera(view, *view_)) {
    scene_.scale_bar = make_scale_bar(view);
  } else {
    scene_ = make_scene(source_, view);
    renderer_.load(scene_);
  }
  view_ = view;
  CloseUpSettings near_settings;
  near_settings.from_px = 2.5;
  near_settings.full_px = 4.0;
  near_settings.most_strand_points = 1'000'000;
  renderer_.load(make_close_up(source_, scene_, view, near_settings), scene_);
  const int factor = fineness(view, style_.most_fine_pixels);
  if (!target_ || target_->width() != view.width_px || target_->height() != view.height_px)
    target_.emplace(view.width_px, view.height_px, factor);
}

Image PictureMaker::draw(const View& view, const GoesOn& goes_on) {
  load(view);
  if (goes_on && !goes_on(0.0)) return {};
  Canvas overlay(view.width_px, view.height_px);
  OverlaySettings words;
  words.text_scale = style_.text_scale;
  words.legend = words.scale_bar = style_.figures;
  if (style_.figures && style_.title) {
    words.title = source_.plan().title();
    words.subtitle = subtitle_of(source_, view, style_.diameter);
  }
  words.guides = style_.guides;
  if (scene_.guide && words.guides.empty())
    words.guides.push_back({scene_.guide->pose, scene_.guide->eye_radius_mm});
  draw_overlay(overlay, scene_, view, words);
  FrameStyle style;
  style.transparent = style_.transparent;
  style.overlay = &overlay;
  if (!renderer_.draw(*target_, scene_, view, sphere_around(source_.plan()), style, goes_on)) return {};
  return target_->read();
}

}  // namespace laywright
