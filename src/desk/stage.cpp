#include "desk/stage.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "scene/finding_view.h"
#include "scene/flight.h"

namespace laywright {
namespace {

bool same_opening(const View& a, const View& b) {
  return a.first_layer == b.first_layer && a.last_layer == b.last_layer && a.wedge == b.wedge &&
         a.axial_cut_rad == b.axial_cut_rad && a.x_from_mm == b.x_from_mm && a.x_to_mm == b.x_to_mm &&
         a.flanges_see_through == b.flanges_see_through;
}

// From the whole wind to the view that `view_of` makes of it.
template <class ViewOf>
Stage flown(Stage stage, const Wound& wound, bool jump, ViewOf view_of) {
  stage = closed_again(std::move(stage));
  // Laid before the scrubber's place, it would not be there to be seen.
  Playback playback = stage.playback;
  playback.playing = false;
  playback.wanted_mm = Playback::at_end;
  stage = with_playback(std::move(stage), playback, wound);
  const View before = stage.view;
  stage.view = view_of(before);
  if (const auto until = stage.view.until_turn) {
    stage = with_playback(std::move(stage), at_turn(playback, wound, *until), wound);
  }
  stage.opened = Stage::Opened{before, stage.view};
  stage.flight.reset();
  if (!jump) {
    stage.flight = Flight{before.camera, stage.view.camera, std::nullopt};
    stage.view.camera = before.camera;
  }
  return stage;
}

}  // namespace

std::optional<std::size_t> picked_node(const Stage& stage, const Wound& wound) {
  if (!stage.picked_turn) return std::nullopt;
  const double node = std::round(*stage.picked_turn * wound.build().stations_per_turn);
  if (node < 0.0 || node >= static_cast<double>(wound.build().nodes.size())) return std::nullopt;
  return static_cast<std::size_t>(node);
}

Stage with_picked_node(Stage stage, const Wound& wound, std::optional<std::size_t> node) {
  stage.picked_turn.reset();
  if (node && *node < wound.build().nodes.size()) {
    stage.picked_turn = static_cast<double>(*node) / wound.build().stations_per_turn;
  }
  return stage;
}

std::optional<std::size_t> neighbour(const Wound& wound, std::size_t node, Toward toward) {
  const NodeFacts facts = facts_of(wound.source, node);
  switch (toward) {
    case Toward::next: return facts.after;
    case Toward::previous: return facts.before;
    case Toward::above: return facts.above;
    case Toward::below: return facts.below;
    case Toward::left: return facts.left;
    case Toward::right: return facts.right;
  }
  return std::nullopt;
}

std::optional<std::size_t> same_finding(const Wound& from, std::size_t finding, const Wound& to) {
  if (finding >= from.measurements().findings.size()) return std::nullopt;
  const Finding& wanted = from.measurements().findings[finding];
  const auto& findings = to.measurements().findings;
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].kind != wanted.kind || findings[i].side != wanted.side) continue;
    const auto distance = [&](std::size_t k) { return std::abs(findings[k].layer - wanted.layer); };
    if (!best || distance(i) < distance(*best)) best = i;
  }
  return best;
}

Stage carried_over(Stage stage, const Wound* from, const Wound& to) {
  std::optional<std::size_t>& chosen = stage.view.chosen_finding;
  if (chosen) chosen = from != nullptr ? same_finding(*from, *chosen, to) : std::nullopt;
  const Playback playback = stage.playback;
  return with_playback(std::move(stage), playback, to);
}

Stage with_playback(Stage stage, const Playback& playback, const Wound& wound) {
  stage.playback = playback;
  stage.view.until_turn.reset();
  const Moment moment = moment_of(playback, wound);
  if (!moment.at_end) stage.view.until_turn = shown_turn(playback, wound, moment);
  return stage;
}

Stage flown_to(Stage stage, const Wound& wound, std::size_t finding, bool jump) {
  return flown(std::move(stage), wound, jump,
               [&](const View& view) { return view_of_finding(wound.source, view, finding); });
}

Stage flown_to(Stage stage, const Wound& wound, const PayoffCatch& caught, bool jump) {
  stage = flown(std::move(stage), wound, jump,
                [&](const View& view) { return view_of_leaving(wound.source, view, caught.node, caught.end_node); });
  stage.view.chosen_finding.reset();
  return with_picked_node(std::move(stage), wound, caught.node);
}

Stage closed_again(Stage stage) {
  if (stage.opened && same_opening(stage.view, stage.opened->after)) {
    const View& before = stage.opened->before;
    stage.view.first_layer = before.first_layer;
    stage.view.last_layer = before.last_layer;
    stage.view.wedge = before.wedge;
    stage.view.axial_cut_rad = before.axial_cut_rad;
    stage.view.x_from_mm = before.x_from_mm;
    stage.view.x_to_mm = before.x_to_mm;
    stage.view.flanges_see_through = before.flanges_see_through;
  }
  stage.opened.reset();
  return stage;
}

Stage flown_on(Stage stage, std::chrono::steady_clock::time_point now, double flight_s) {
  if (!stage.flight) return stage;
  Flight& flight = *stage.flight;
  if (!flight.begun) flight.begun = now;
  const double seconds = std::chrono::duration<double>(now - *flight.begun).count();
  const double share = flight_s > 0.0 ? seconds / flight_s : 1.0;
  Camera camera = camera_between(flight.from, flight.to, share);
  camera.projection = stage.view.camera.projection;
  stage.view.camera = camera;
  if (share >= 1.0) stage.flight.reset();
  return stage;
}

}  // namespace laywright
