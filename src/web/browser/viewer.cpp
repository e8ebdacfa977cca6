#include "web/browser/viewer.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <map>
#include <numbers>
#include <stdexcept>
#include <string_view>
#include <utility>

#include "desk/wound_bytes.h"
#include "plan/plan_file.h"
#include "render/overlay.h"
#include "scene/finding_view.h"

namespace laywright {
namespace {

constexpr double flight_s = 0.7;

}  // namespace

nlohmann::json Viewer::answer(const std::string& name, const Json& in) {
  static const std::map<std::string_view, Json (Viewer::*)(const Json&)> answers{
      {"start", &Viewer::start},
      {"change", &Viewer::change},
      {"revert", &Viewer::revert},
      {"stepField", &Viewer::step_field},
      {"planText", &Viewer::plan_text},
      {"size", &Viewer::size},
      {"orbit", &Viewer::orbit},
      {"pan", &Viewer::pan},
      {"zoom", &Viewer::zoom},
      {"look", &Viewer::look},
      {"fit", &Viewer::fit},
      {"show", &Viewer::show},
      {"showAll", &Viewer::show_all},
      {"peel", &Viewer::peel},
      {"wedge", &Viewer::wedge},
      {"cut", &Viewer::cut},
      {"makeReady", &Viewer::make_ready},
      {"draw", &Viewer::draw},
      {"words", &Viewer::words},
      {"losePicture", &Viewer::lose_picture},
      {"scrub", &Viewer::scrub},
      {"play", &Viewer::play},
      {"rate", &Viewer::rate},
      {"step", &Viewer::step},
      {"fly", &Viewer::fly},
      {"pick", &Viewer::pick},
      {"toward", &Viewer::toward},
      {"results", &Viewer::results},
      {"hash", &Viewer::hash},
      {"seen", &Viewer::seen},
      {"place", &Viewer::place}};
  // Without a build there is nothing to look at; these do without one.
  static constexpr std::array<std::string_view, 9> early{"start", "change", "revert",    "stepField",  "planText",
                                                         "size",  "show",   "makeReady", "losePicture"};
  const auto found = answers.at(name);
  const bool is_early = std::find(early.begin(), early.end(), name) != early.end();
  if (!wound_ && !is_early) return nullptr;
  return (this->*found)(in);
}

// {text, seed}: the plan of the page.
nlohmann::json Viewer::start(const Json& in) {
  desk_.emplace(in.at("text").get<std::string>());
  seed_ = in.at("seed");
  return desk_->fields(view().units);
}

// {path, text, unit}: what was typed into a field. The fields.
nlohmann::json Viewer::change(const Json& in) {
  desk_->change(in.at("path"), in.at("text"), find_unit(in.at("unit").get<std::string>()));
  return desk_->fields(view().units);
}

nlohmann::json Viewer::revert(const Json& /*in*/) {
  desk_->revert();
  return desk_->fields(view().units);
}

// {path, text, steps}: what is typed into a field, so many steps on; null where it cannot be stepped.
nlohmann::json Viewer::step_field(const Json& in) {
  const auto next = desk_->stepped(in.at("path"), in.at("text"), in.at("steps"), view().units);
  return next ? Json(*next) : Json(nullptr);
}

// The plan as it stands, for the worker and for keeping.
nlohmann::json Viewer::plan_text(const Json& /*in*/) {
  return {{"text", desk_->text()}, {"fields", desk_->fields(view().units)}};
}

NodeStore::Columns& Viewer::room_for(std::size_t nodes) {
  incoming_ = {std::vector<std::uint32_t>(nodes), std::vector<std::uint32_t>(nodes),
               std::vector<std::uint8_t>(nodes)};
  return incoming_;
}

bool Viewer::take(const std::uint8_t* bytes, std::size_t count, const std::string& plan_text, const Pass& pass) {
  std::optional<ReceivedWound> received = from_bytes(bytes, count, std::exchange(incoming_, {}));
  Result<Plan> plan = plan_from_text(plan_text, "");
  if (!received || !plan || received->build.nodes.size() == 0) return false;
  const auto build = std::make_shared<const Build>(std::move(received->build));
  const auto measurements = std::make_shared<const Measurements>(std::move(received->measurements));
  const WoundPtr before = std::exchange(wound_, nullptr);
  wound_ = std::make_shared<const Wound>(Wound{SceneSource(plan_for(plan.value(), pass), build, measurements), pass,
                                               before ? before->revision + 1 : 1});
  stage_ = carried_over(std::move(stage_), before.get(), *wound_);
  if (!fitted_) view().camera = fit_camera(plan.value(), view());
  fitted_ = true;
  return true;
}

// {}: lets the graphics card go, when the browser has taken it away; the next draw makes everything anew.
nlohmann::json Viewer::lose_picture(const Json& /*in*/) {
  picture_.reset();
  return nullptr;
}

// {}: before there is a wind, so that its first picture comes sooner.
nlohmann::json Viewer::make_ready(const Json& /*in*/) {
  picture().make_ready();
  return nullptr;
}

Picture& Viewer::picture() {
  if (!picture_) picture_ = std::make_unique<Picture>();
  return *picture_;
}

// {pass}: the picture, "quick", "plain" or "fine".
nlohmann::json Viewer::draw(const Json& in) {
  static const std::map<std::string_view, Picture::Pass> passes{
      {"quick", Picture::Pass::quick}, {"plain", Picture::Pass::plain}, {"fine", Picture::Pass::fine}};
  picture().draw(wound_, view(), passes.at(in.at("pass").get<std::string>()));
  return true;
}

// {}: what is written over the picture.
nlohmann::json Viewer::words(const Json& /*in*/) {
  draw_words(picture().scene_of(wound_, view()));
  return nullptr;
}

void Viewer::draw_words(const Scene& scene) {
  Canvas canvas(view().width_px, view().height_px);
  OverlaySettings settings;
  settings.text_scale = text_scale_;
  settings.legend = legend_;
  draw_overlay(canvas, scene, view(), settings);
  const std::optional<std::size_t> node = picked_node(stage_, *wound_);
  if (!node) return;
  const Build& build = wound_->build();
  const double angle = 2.0 * std::numbers::pi * static_cast<double>(*node % wound_->source.stations()) /
                       static_cast<double>(wound_->source.stations());
  // What is cut or peeled away has no ring in the air.
  if (is_removed(scene.removed, angle) || !visible_fiber(wound_->source, view()).shows(*node)) return;
  const auto at = in_picture(view(), in_space(build.nodes.x(*node), build.nodes.r(*node), angle));
  if (!at) return;
  const ThemeColours colours = theme_colours(view().theme);
  const auto ink = [](const Rgba& c) { return Ink{glm::vec3(c.r, c.g, c.b) / 255.0F, 1.0}; };
  canvas.ring(*at, 9.0 * text_scale_, ink(colours.ground_top), 5.0 * text_scale_);
  canvas.ring(*at, 9.0 * text_scale_, ink(hue_palette[0]), 2.5 * text_scale_);
}

// {share}, {turn} or {by}: the wind up to a share of its length, to a turn, or so many turns on.
nlohmann::json Viewer::scrub(const Json& in) {
  Playback playback = stage_.playback;
  playback.playing = false;
  if (in.contains("share")) {
    const double share = in.at("share");
    playback = at_length(playback, *wound_, share >= 1.0 ? Playback::at_end : share * wound_->build().length_mm);
  } else if (in.contains("turn")) {
    playback = at_turn(playback, *wound_, in.at("turn"));
  } else {
    playback = at_turn(playback, *wound_, moment_of(playback, *wound_).turn + in.at("by").get<double>());
  }
  stage_ = with_playback(std::move(stage_), playback, *wound_);
  return nullptr;
}

// {on}
nlohmann::json Viewer::play(const Json& in) {
  Playback playback = stage_.playback;
  if (in.at("on").get<bool>()) {
    playback = started(playback);
  } else {
    playback.playing = false;
  }
  stage_ = with_playback(std::move(stage_), playback, *wound_);
  return nullptr;
}

// {times}: the play so much faster.
nlohmann::json Viewer::rate(const Json& in) {
  stage_.playback = with_rate(stage_.playback, rate_of(stage_.playback, *wound_) * in.at("times").get<double>());
  return nullptr;
}

// {seconds}: time goes on, for play and flights. True while something moves.
nlohmann::json Viewer::step(const Json& in) {
  stage_ = flown_on(std::move(stage_), std::chrono::steady_clock::now(), flight_s);
  if (stage_.playback.playing)
    stage_ = with_playback(std::move(stage_), played(stage_.playback, *wound_, in.at("seconds")), *wound_);
  return stage_.playback.playing || stage_.flight.has_value();
}

// {finding, jump}: to where it is seen best.
nlohmann::json Viewer::fly(const Json& in) {
  const std::size_t finding = in.at("finding");
  if (finding >= wound_->measurements().findings.size()) return nullptr;
  stage_ = flown_to(std::move(stage_), *wound_, finding, in.at("jump"));
  view().chosen_finding = finding;
  view().findings = true;
  return nullptr;
}

}  // namespace laywright
