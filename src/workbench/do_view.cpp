// Commands that change what is seen.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "scene/camera.h"
#include "workbench/doer.h"

namespace laywright {
namespace {

constexpr double quarter = 0.5 * std::numbers::pi;
constexpr double nearest_mm = 1.0, farthest_mm = 1e5;

// Angle around the spool's axis that faces the eye; the top of the spool for an eye on the axis.
double angle_toward_eye(const Camera& camera) {
  const Vec3 back = -forward_of(camera);
  constexpr double on_axis = 1e-6;
  return radius_of(back) < on_axis ? 0.0 : angle_of(back);
}

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

template <class Enum>
Enum other(Enum value, Enum one, Enum another) {
  return value == one ? another : one;
}

}  // namespace

template <class Change>
bool Workbench::Doer::prefer(Change change) const {
  // Changed from what is seen now, or from what will be.
  View& first = bench.desks_.empty() ? bench.settings_.view : stage().view;
  change(first);
  const auto copy = [&](View& to) {
    static_cast<ViewChoices&>(to) = first;
    to.camera.projection = first.camera.projection;
  };
  copy(bench.settings_.view);
  for (Desk& desk : bench.desks_) copy(desk.stage.view);
  if (bench.comparison_) copy(bench.comparison_->stage.view);
  return true;
}

bool Workbench::Doer::operator()(const cmd::Peel& c) const {
  view().first_layer = std::max(1, c.first_layer);
  view().last_layer = c.last_layer;
  if (view().last_layer) view().last_layer = std::max(*view().last_layer, view().first_layer);
  return true;
}

bool Workbench::Doer::operator()(const cmd::PeelOne& c) const {
  const int layers = static_cast<int>(wound().build().strokes.size());
  const int last = std::min(view().last_layer.value_or(layers), layers) + c.layers;
  view().last_layer.reset();
  if (last < layers) view().last_layer = std::max(last, view().first_layer);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetWedge& c) const {
  view().wedge = c.wedge;
  if (c.wedge && !(std::isfinite(c.wedge->from) && std::isfinite(c.wedge->to))) view().wedge.reset();
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetAxialCut& c) const {
  view().axial_cut_rad = c.angle_rad;
  if (c.angle_rad && !std::isfinite(*c.angle_rad)) view().axial_cut_rad.reset();
  return true;
}

bool Workbench::Doer::operator()(const cmd::ToggleWedge&) const {
  if (view().wedge) {
    view().wedge.reset();
    return true;
  }
  const double toward = angle_toward_eye(view().camera);
  view().wedge = Sector{toward - 0.5 * quarter, toward + 0.5 * quarter};
  return true;
}

bool Workbench::Doer::operator()(const cmd::ToggleAxialCut&) const {
  if (view().axial_cut_rad) {
    view().axial_cut_rad.reset();
  } else {
    view().axial_cut_rad = angle_toward_eye(view().camera) - quarter;
  }
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetXRange& c) const {
  view().x_from_mm = c.from_mm && std::isfinite(*c.from_mm) ? c.from_mm : std::nullopt;
  view().x_to_mm = c.to_mm && std::isfinite(*c.to_mm) ? c.to_mm : std::nullopt;
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetColouring& c) const {
  return prefer([&](View& v) { v.colouring = c.colouring; });
}

bool Workbench::Doer::operator()(const cmd::NextColouring&) const {
  return prefer([](View& v) {
    v.colouring = static_cast<Colouring>((static_cast<std::size_t>(v.colouring) + 1) % colouring_names.size());
  });
}

bool Workbench::Doer::operator()(const cmd::ToggleOutside&) const {
  return prefer([](View& v) { v.outside = other(v.outside, Outside::gone, Outside::faded); });
}

bool Workbench::Doer::operator()(const cmd::ToggleFindings&) const {
  return prefer([](View& v) { v.findings = !v.findings; });
}

bool Workbench::Doer::operator()(const cmd::ToggleDimensions&) const {
  return prefer([](View& v) { v.dimensions = !v.dimensions; });
}

bool Workbench::Doer::operator()(const cmd::ToggleSeeThrough&) const {
  return prefer([](View& v) { v.flanges_see_through = !v.flanges_see_through; });
}

bool Workbench::Doer::operator()(const cmd::ToggleGuide&) const {
  return prefer([](View& v) { v.guide = !v.guide; });
}

bool Workbench::Doer::operator()(const cmd::ToggleUnits&) const {
  return prefer([](View& v) { v.units = other(v.units, Units::metric, Units::inch); });
}

bool Workbench::Doer::operator()(const cmd::ToggleTheme&) const {
  return prefer([](View& v) { v.theme = other(v.theme, Theme::light, Theme::dark); });
}

bool Workbench::Doer::operator()(const cmd::ToggleProjection&) const {
  return prefer([](View& v) {
    v.camera.projection = other(v.camera.projection, Projection::perspective, Projection::parallel);
  });
}

bool Workbench::Doer::operator()(const cmd::ToggleMotion&) const {
  bench.settings_.motion = !bench.settings_.motion;
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetCamera& c) const {
  stage().flight.reset();  // where the person takes it, it goes
  view().camera = brought_in(c.camera, view().camera);
  return true;
}

bool Workbench::Doer::operator()(const cmd::Orbit& c) const {
  Camera camera = view().camera;
  camera.azimuth_deg += c.azimuth_deg;
  camera.elevation_deg += c.elevation_deg;
  return (*this)(cmd::SetCamera{camera});
}

bool Workbench::Doer::operator()(const cmd::Zoom& c) const {
  Camera camera = view().camera;
  if (c.factor > 0.0) camera.distance_mm /= c.factor;
  return (*this)(cmd::SetCamera{camera});
}

bool Workbench::Doer::operator()(const cmd::LookFrom& c) const {
  Camera camera = view().camera;
  camera.azimuth_deg = c.azimuth_deg;
  camera.elevation_deg = c.elevation_deg;
  (*this)(cmd::SetCamera{camera});
  return (*this)(cmd::FitView{});
}

bool Workbench::Doer::operator()(const cmd::FitView&) const {
  stage().flight.reset();
  view().camera = fit_camera(wound().plan(), view());
  return true;
}

bool Workbench::Doer::operator()(const cmd::ShowAll&) const {
  view() = with_nothing_away(view());
  return (*this)(cmd::ToEnd{});
}

// Two pictures side by side are of one size.
bool Workbench::Doer::operator()(const cmd::SetPictureSize& c) const {
  constexpr int largest = 16384;
  const auto resize = [&](View& v) {
    v.width_px = std::clamp(c.width_px, 1, largest);
    v.height_px = std::clamp(c.height_px, 1, largest);
  };
  resize(bench.active_desk()->stage.view);
  if (bench.comparison_) resize(bench.comparison_->stage.view);
  return true;
}

bool Workbench::Doer::operator()(const cmd::SetScale& c) const {
  if (!std::isfinite(c.scale)) return false;
  bench.settings_.scale = std::clamp(c.scale, Settings::smallest_scale, Settings::largest_scale);
  return true;
}

}  // namespace laywright
