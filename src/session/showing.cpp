#include "session/showing.h"

#include <algorithm>
#include <cmath>

#include "desk/stage.h"
#include "measure/diameter_so_far.h"
#include "scene/camera.h"

namespace laywright {
namespace {

// The camera drifts past the front while the spool fills, then goes round to where it began.
constexpr double first_azimuth_deg = -34.0, last_azimuth_deg = 30.0;
constexpr double shown_elevation_deg = 15.0;
constexpr double veil_s = 0.8;

double eased(double share) { return share * share * (3.0 - 2.0 * share); }

double azimuth_of(const Showing& showing) {
  if (showing.seconds < Showing::fill_s) {
    return std::lerp(first_azimuth_deg, last_azimuth_deg, showing.seconds / Showing::fill_s);
  }
  const double share = (showing.seconds - Showing::fill_s) / Showing::turn_s;
  return std::lerp(last_azimuth_deg, first_azimuth_deg + 360.0, 0.5 * (share + eased(share)));
}

// From which the spool fits from every side, so that it does not seem to breathe.
double distance_of(const Plan& plan, View view) {
  double distance = 0.0;
  for (double azimuth = 0.0; azimuth <= 90.0; azimuth += 15.0) {
    view.camera.azimuth_deg = azimuth;
    distance = std::max(distance, fit_camera(plan, view).distance_mm);
  }
  return distance;
}

Camera camera_of(const Showing& showing, const Plan& plan, const View& view, const ShowRoom& room) {
  const double share = std::max(0.2, 1.0 - room.above - room.below);
  View between = view;
  between.height_px = std::max(1, static_cast<int>(share * view.height_px));
  View seen = view;
  seen.camera = fit_camera(plan, between);
  // What is as high as the room between the words is that part of the whole picture.
  seen.camera.distance_mm = distance_of(plan, between) / share;
  seen.camera.azimuth_deg = azimuth_of(showing);
  const double up_px = 0.5 * (room.above - room.below) * view.height_px;
  seen.camera.target += up_of(seen.camera) * (up_px * mm_per_px(seen));
  return seen.camera;
}

double length_of(const Showing& showing, const Wound& wound) {
  return share_filled(showing) * wound.build().length_mm;
}

}  // namespace

Showing shown_on(Showing showing, double seconds) {
  if (showing.paused || !(seconds > 0.0)) return showing;
  showing.seconds = std::fmod(showing.seconds + seconds, Showing::round_s);
  return showing;
}

double share_filled(const Showing& showing) {
  const double share = std::clamp(showing.seconds / Showing::fill_s, 0.0, 1.0);
  return 0.5 * (share + eased(share));
}

double veil(const Showing& showing) {
  const double away = std::min(showing.seconds, Showing::round_s - showing.seconds);
  return 1.0 - eased(std::clamp(away / veil_s, 0.0, 1.0));
}

View view_of_showing(const Showing& showing, const Wound& wound, View view, const ShowRoom& room) {
  View shown;
  shown.theme = view.theme;
  shown.units = view.units;
  shown.width_px = view.width_px;
  shown.height_px = view.height_px;
  shown.findings = shown.dimensions = false;
  shown.colouring = Colouring::material;
  shown.camera.projection = view.camera.projection;
  shown.camera.elevation_deg = shown_elevation_deg;
  shown.camera = camera_of(showing, wound.plan(), shown, room);
  if (share_filled(showing) >= 1.0) return shown;
  Stage stage;
  stage.view = shown;
  Playback playback;
  playback.wanted_mm = length_of(showing, wound);
  playback.playing = true;
  playback.rate = wound.build().length_mm / Showing::fill_s / line_speed_of(wound.plan()).mm_per_s;
  return with_playback(std::move(stage), playback, wound).view;
}

ShowFigures figures_of_showing(const Showing& showing, const Wound& wound) {
  ShowFigures figures;
  figures.length_mm = length_of(showing, wound);
  figures.turns = turn_at_length(wound.source, figures.length_mm);
  const LineSpeed speed = line_speed_of(wound.plan());
  if (!speed.assumed) figures.time_s = figures.length_mm / speed.mm_per_s;
  figures.diameter_mm =
      diameter_so_far(wound.measurements(), wound.plan().spool().barrel_diameter_mm, figures.length_mm);
  return figures;
}

}  // namespace laywright
