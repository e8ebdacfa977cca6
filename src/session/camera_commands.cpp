#include "session/camera_commands.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "scene/camera.h"
#include "session/bench_inside.h"
#include "session/command_rows.h"

namespace laywright {
namespace {

constexpr double nearest_mm = 1.0, farthest_mm = 1e5;

double kept(double value, double fallback) { return std::isfinite(value) ? value : fallback; }

Camera brought_in(Camera camera, const Camera& before) {
  camera.azimuth_deg = std::remainder(kept(camera.azimuth_deg, before.azimuth_deg), 360.0);
  camera.elevation_deg = std::clamp(kept(camera.elevation_deg, before.elevation_deg), -90.0, 90.0);
  camera.distance_mm = std::clamp(kept(camera.distance_mm, before.distance_mm), nearest_mm, farthest_mm);
  camera.field_of_view_deg = std::clamp(kept(camera.field_of_view_deg, before.field_of_view_deg), 1.0, 120.0);
  const Vec3& target = camera.target;
  if (!std::isfinite(target.x) || !std::isfinite(target.y) || !std::isfinite(target.z))
    camera.target = before.target;
  return camera;
}

// Where the person takes it, it goes.
void take_camera(const BenchInside& in, const Camera& camera) {
  in.stage().flight.reset();
  in.view().camera = brought_in(camera, in.view().camera);
}

void fit_picture(const BenchInside& in) {
  in.stage().flight.reset();
  in.view().camera = fit_camera(in.wound().plan(), in.view());
}

// Two pictures side by side are of one size.
void resize(const BenchInside& in, int width_px, int height_px) {
  constexpr int largest = 16384;
  const auto bring = [&](View& view) {
    view.width_px = std::clamp(width_px, 1, largest);
    view.height_px = std::clamp(height_px, 1, largest);
  };
  bring(in.desk().stage.view);
  if (in.comparison) bring(in.comparison->stage.view);
}

}  // namespace

Command cmd::set_camera(const Camera& camera) {
  return {{.name = "set camera", .act = [camera](const BenchInside& in) { take_camera(in, camera); }}};
}

Command cmd::orbit(double azimuth_deg, double elevation_deg) {
  return {{.name = fmt::format("orbit {} {}", azimuth_deg, elevation_deg),
           .act = [azimuth_deg, elevation_deg](const BenchInside& in) {
             Camera camera = in.view().camera;
             camera.azimuth_deg += azimuth_deg;
             camera.elevation_deg += elevation_deg;
             take_camera(in, camera);
           }}};
}

Command cmd::zoom(double factor) {
  return {{.name = fmt::format("zoom {}", factor), .act = [factor](const BenchInside& in) {
             Camera camera = in.view().camera;
             if (factor > 0.0) camera.distance_mm /= factor;
             take_camera(in, camera);
           }}};
}

Command cmd::look_from(double azimuth_deg, double elevation_deg) {
  return {{.name = fmt::format("look from {} {}", azimuth_deg, elevation_deg),
           .needs = Needs::build,
           .act = [azimuth_deg, elevation_deg](const BenchInside& in) {
             Camera camera = in.view().camera;
             camera.azimuth_deg = azimuth_deg;
             camera.elevation_deg = elevation_deg;
             take_camera(in, camera);
             fit_picture(in);
           }}};
}

Command cmd::fit_view() { return {{.name = "fit", .needs = Needs::build, .act = fit_picture}}; }

Command cmd::set_picture_size(int width_px, int height_px) {
  return {{.name = "set picture size",
           .act = [width_px, height_px](const BenchInside& in) { resize(in, width_px, height_px); }}};
}

CommandRows camera_rows() {
  using namespace cmd;
  return {
      {"View", "Fit", "Z", "See the whole spool.", fit_view()},
      {"View", "From the front", "1", "Look at the spool from the side, its left end on the left.",
       look_from(0.0, 0.0)},
      {"View", "From above", "2", "Look at the top of the spool.", look_from(0.0, 90.0)},
      {"View", "From the left", "3", "Look at the left flange.", look_from(-90.0, 0.0)},
      {"View", "From the right", "4", "Look at the right flange.", look_from(90.0, 0.0)},
      {"View", "Askew", "5", "Look at the spool askew, from above.", look_from(30.0, 20.0)},
      {"View", "Turn left", "Ctrl+Alt+Left", "Go round the spool to the left.", orbit(-10.0, 0.0)},
      {"View", "Turn right", "Ctrl+Alt+Right", "Go round the spool to the right.", orbit(10.0, 0.0)},
      {"View", "Turn up", "Ctrl+Alt+Up", "Look from higher above.", orbit(0.0, 10.0)},
      {"View", "Turn down", "Ctrl+Alt+Down", "Look from lower down.", orbit(0.0, -10.0)},
      {"View", "Nearer", "+", "Go nearer.", zoom(1.25)},
      {"View", "Farther", "-", "Go farther away.", zoom(0.8)},
  };
}

}  // namespace laywright
