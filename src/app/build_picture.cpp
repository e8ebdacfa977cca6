#include "app/build_picture.h"

#include <algorithm>
#include <cstdint>
#include <stdexcept>

#include "app/picture_maker.h"
#include "figures/both_units.h"
#include "paint/offscreen_context.h"
#include "scene/camera.h"

namespace laywright {
namespace {

Bitmap draw_in(const Result<OffscreenContext>& context, const SceneSource& source, const View& view, bool figures,
               const GoesOn& goes_on) {
  if (!context.ok()) return {};
  PictureStyle style;
  style.figures = figures;
  style.title = false;
  style.text_scale = customer_text_scale;
  style.transparent = true;
  try {
    return on_white(PictureMaker(source, style).draw(view, goes_on));
  } catch (const std::runtime_error&) {
    return {};
  }
}

View view_for_paper(const Plan& plan) {
  View view;
  view.width_px = 1200;
  view.height_px = 760;
  view.dimensions = false;
  view.findings = false;
  view.guide = false;
  view.camera.azimuth_deg = 24.0;
  view.camera.elevation_deg = 16.0;
  view.camera = fit_camera(plan, view);
  return view;
}

GoesOn going_on(Progress& progress) {
  return [&progress](double share) {
    progress.report(share);
    return !progress.cancelled();
  };
}

}  // namespace

// Colours come multiplied by their opacity.
Bitmap on_white(const Image& image) {
  Bitmap bitmap{{}, image.width, image.height, image.bytes};
  for (std::size_t i = 0; i < bitmap.pixels.size(); ++i) {
    const int clear = 255 - image.bytes[i / 4 * 4 + 3];
    bitmap.pixels[i] = static_cast<std::uint8_t>(std::min(255, image.bytes[i] + clear));
  }
  return bitmap;
}

View view_for_customer(const Plan& plan) {
  View view;
  view.width_px = 1500;
  view.height_px = 1100;
  view.colouring = Colouring::material;
  view.findings = view.legend = view.guide = false;
  view.units = in_inches(plan) ? Units::inch : Units::metric;
  view.camera.azimuth_deg = 24.0;
  view.camera.elevation_deg = 16.0;
  view.camera = fit_camera(plan, view);
  return view;
}

Bitmap picture_for_customer(const SceneSource& source, Progress& progress) {
  return draw_in(OffscreenContext::open(), source, view_for_customer(source.plan()), true, going_on(progress));
}

Bitmap picture_for_paper(const SceneSource& source, Progress& progress) {
  return draw_in(OffscreenContext::open(), source, view_for_paper(source.plan()), false, going_on(progress));
}

Bitmap picture_for_paper_beside_window(const SceneSource& source, Progress& progress) {
  return draw_in(OffscreenContext::open_beside_another(), source, view_for_paper(source.plan()), false,
                 going_on(progress));
}

}  // namespace laywright
