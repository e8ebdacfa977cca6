// Questions that change how the build is looked at. Places are in pixels of the canvas, angles in degrees.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/quantity_text.h"
#include "base/units.h"
#include "desk/place_words.h"
#include "web/browser/viewer.h"

namespace laywright {
namespace {

using Json = nlohmann::json;
constexpr double nearest_mm = 1.0, farthest_mm = 1e5;

// Angle around the spool's axis that faces the eye; the top of the spool for an eye on the axis.
double angle_toward_eye(const Camera& camera) {
  const Vec3 back = -forward_of(camera);
  constexpr double on_axis = 1e-6;
  return radius_of(back) < on_axis ? 0.0 : angle_of(back);
}

double in_turn_deg(double rad) {
  const double deg = std::remainder(rad, 2.0 * std::numbers::pi) / rad_per_deg;
  return deg < 0.0 ? deg + 360.0 : deg;
}

// As a slider has it, and its words.
Json angle_told(double deg) { return {{"deg", deg}, {"words", degrees_text(deg, 0)}}; }

}  // namespace

// {width, height, scale}: of the canvas, and how many of its pixels are one of the page.
nlohmann::json Viewer::size(const Json& in) {
  constexpr int most = 8192;
  const bool was_empty = view().width_px <= 1;
  view().width_px = std::clamp(in.at("width").get<int>(), 1, most);
  view().height_px = std::clamp(in.at("height").get<int>(), 1, most);
  text_scale_ = in.at("scale");
  if (wound_ && was_empty) view().camera = fit_camera(wound_->plan(), view());
  return nullptr;
}

// {azimuth, elevation}: the eye goes so far round the spool.
nlohmann::json Viewer::orbit(const Json& in) {
  stage_.flight.reset();
  Camera& camera = view().camera;
  camera.azimuth_deg = std::remainder(camera.azimuth_deg + in.at("azimuth").get<double>(), 360.0);
  camera.elevation_deg = std::clamp(camera.elevation_deg + in.at("elevation").get<double>(), -90.0, 90.0);
  return nullptr;
}

// {x, y}: the picture moves along.
nlohmann::json Viewer::pan(const Json& in) {
  stage_.flight.reset();
  Camera& camera = view().camera;
  const double mm = mm_per_px(view());
  camera.target +=
      right_of(camera) * (-mm * in.at("x").get<double>()) + up_of(camera) * (mm * in.at("y").get<double>());
  return nullptr;
}

// {times, x, y}: nearer, such that what lies at that place stays there.
nlohmann::json Viewer::zoom(const Json& in) {
  stage_.flight.reset();
  Camera& camera = view().camera;
  const double wanted = camera.distance_mm / in.at("times").get<double>();
  const double distance = std::clamp(wanted, nearest_mm, farthest_mm);
  const double shift = mm_per_px(view()) * (1.0 - distance / camera.distance_mm);
  const double x = in.at("x").get<double>() - 0.5 * view().width_px,
               y = in.at("y").get<double>() - 0.5 * view().height_px;
  camera.target += right_of(camera) * (x * shift) - up_of(camera) * (y * shift);
  camera.distance_mm = distance;
  return nullptr;
}

// {azimuth, elevation}
nlohmann::json Viewer::look(const Json& in) {
  view().camera.azimuth_deg = in.at("azimuth");
  view().camera.elevation_deg = in.at("elevation");
  return fit(in);
}

nlohmann::json Viewer::fit(const Json& /*in*/) {
  stage_.flight.reset();
  view().camera = fit_camera(wound_->plan(), view());
  return nullptr;
}

// Any of {colouring, fade, findings, dimensions, legend, seeThrough, inch, dark}.
nlohmann::json Viewer::show(const Json& in) {
  View& v = view();
  const auto flag = [&](const char* name, bool& value) { value = in.value(name, value); };
  flag("findings", v.findings);
  flag("dimensions", v.dimensions);
  flag("legend", legend_);
  flag("seeThrough", v.flanges_see_through);
  if (in.contains("fade")) v.outside = in.at("fade") ? Outside::faded : Outside::gone;
  if (in.contains("inch")) v.units = in.at("inch") ? Units::inch : Units::metric;
  if (in.contains("dark")) v.theme = in.at("dark") ? Theme::dark : Theme::light;
  if (in.contains("colouring")) {
    v.colouring = colouring_named(in.at("colouring").get<std::string>()).value_or(v.colouring);
  }
  return nullptr;
}

// No peel, no cut, the whole wind.
nlohmann::json Viewer::show_all(const Json& /*in*/) {
  View& v = view();
  v.first_layer = 1;
  v.last_layer.reset();
  v.wedge.reset();
  v.axial_cut_rad.reset();
  v.chosen_finding.reset();
  return scrub({{"share", 1.0}});
}

// {first, last}: the layers that are shown.
nlohmann::json Viewer::peel(const Json& in) {
  const int layers = static_cast<int>(wound_->build().strokes.size());
  const int first = std::clamp(in.at("first").get<int>(), 1, layers);
  const int last = std::clamp(in.at("last").get<int>(), first, layers);
  view().first_layer = first;
  view().last_layer.reset();
  if (last < layers) view().last_layer = last;
  return nullptr;
}

// {on}: a quarter towards the eye. {from, opening}: another one.
nlohmann::json Viewer::wedge(const Json& in) {
  View& v = view();
  if (in.contains("from")) {
    const double from = in.at("from").get<double>() * rad_per_deg;
    v.wedge = Sector{from, from + in.at("opening").get<double>() * rad_per_deg};
  } else if (in.at("on").get<bool>()) {
    const double toward = angle_toward_eye(v.camera), eighth = 0.25 * std::numbers::pi;
    v.wedge = Sector{toward - eighth, toward + eighth};
  } else {
    v.wedge.reset();
  }
  return nullptr;
}

// {on}: square to the eye. {angle}: another one.
nlohmann::json Viewer::cut(const Json& in) {
  View& v = view();
  if (in.contains("angle")) {
    v.axial_cut_rad = in.at("angle").get<double>() * rad_per_deg;
  } else if (in.at("on").get<bool>()) {
    v.axial_cut_rad = angle_toward_eye(v.camera) - 0.5 * std::numbers::pi;
  } else {
    v.axial_cut_rad.reset();
  }
  return nullptr;
}

// How the build is looked at, all of it.
nlohmann::json Viewer::seen(const Json& /*in*/) {
  const View& v = view();
  const int layers = static_cast<int>(wound_->build().strokes.size());
  const Moment moment = moment_of(stage_.playback, *wound_);
  const int first = std::clamp(v.first_layer, 1, layers);
  const MomentWords place_told = moment_words(moment, *wound_, v.units);
  Json out = {{"layers", layers},
              {"first", first},
              {"last", std::clamp(v.last_layer.value_or(layers), first, layers)},
              {"fade", v.outside == Outside::faded},
              {"colouring", name_of(v.colouring)},
              {"findings", v.findings},
              {"dimensions", v.dimensions},
              {"legend", legend_},
              {"seeThrough", v.flanges_see_through},
              {"inch", v.units == Units::inch},
              {"dark", v.theme == Theme::dark},
              {"wedge", nullptr},
              {"cut", nullptr},
              {"chosen", nullptr},
              {"camera",
               {{"azimuth", v.camera.azimuth_deg},
                {"elevation", v.camera.elevation_deg},
                {"distance", v.camera.distance_mm}}},
              {"moment",
               {{"atEnd", moment.at_end},
                {"length", moment.length_mm},
                {"turn", moment.turn},
                {"layer", moment.layer},
                {"words", {place_told.of_length, place_told.of_layers, place_told.turn, place_told.time}},
                {"fewWords", {place_told.length, place_told.layer, place_told.turn}}}},
              {"length", wound_->build().length_mm},
              {"turns", wound_->build().turns},
              {"playing", stage_.playback.playing},
              {"rate", rate_words(rate_of(stage_.playback, *wound_))},
              {"moving", stage_.playback.playing || stage_.flight.has_value()},
              {"picked", facts()}};
  if (v.wedge)
    out["wedge"] = {{"from", angle_told(in_turn_deg(v.wedge->from))},
                    {"opening", angle_told((v.wedge->to - v.wedge->from) / rad_per_deg)}};
  if (v.axial_cut_rad) out["cut"] = {{"angle", angle_told(in_turn_deg(*v.axial_cut_rad))}};
  if (v.chosen_finding) out["chosen"] = *v.chosen_finding;
  return out;
}

}  // namespace laywright
