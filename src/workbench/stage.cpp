#include "workbench/stage.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace laywright {

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
  if (!moment.at_end) stage.view.until_turn = moment.turn;
  return stage;
}

Stage flown_to(Stage stage, const Wound& wound, std::size_t finding) {
  // Laid before the scrubber's place, it would not be there to be seen.
  Playback playback = stage.playback;
  playback.playing = false;
  playback.wanted_mm = Playback::at_end;
  stage = with_playback(std::move(stage), playback, wound);
  stage.view = view_of_finding(wound.source, stage.view, finding);
  stage.view.chosen_finding = finding;
  stage.view.findings = true;
  return stage;
}

}  // namespace laywright
