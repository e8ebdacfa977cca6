// Commands of the scrubber, of the picked turn and of the chosen finding.
#include "workbench/doer.h"

namespace laywright {

bool Workbench::Doer::scrub(const Playback& playback) const {
  stage() = with_playback(stage(), playback, wound());
  return true;
}

bool Workbench::Doer::operator()(const cmd::ScrubLength& c) const {
  return scrub(at_length(stage().playback, wound(), c.length_mm));
}

bool Workbench::Doer::operator()(const cmd::ScrubTurn& c) const {
  return scrub(at_turn(stage().playback, wound(), c.turn));
}

bool Workbench::Doer::operator()(const cmd::ScrubTime& c) const {
  return scrub(at_time(stage().playback, wound(), c.time_s));
}

bool Workbench::Doer::operator()(const cmd::PlayPause&) const {
  Playback playback = stage().playback;
  if (!playback.playing) return scrub(started(playback));
  playback.playing = false;
  return scrub(playback);
}

bool Workbench::Doer::operator()(const cmd::SetRate& c) const { return scrub(with_rate(stage().playback, c.rate)); }

bool Workbench::Doer::operator()(const cmd::ChangeRate& c) const {
  return scrub(with_rate(stage().playback, rate_of(stage().playback, wound()) * c.factor));
}

bool Workbench::Doer::operator()(const cmd::StepTurns& c) const {
  Playback playback = stage().playback;
  playback.playing = false;
  return scrub(at_turn(playback, wound(), moment_of(playback, wound()).turn + c.turns));
}

bool Workbench::Doer::operator()(const cmd::StepFinding& c) const {
  Playback playback = stage().playback;
  playback.playing = false;
  view().chosen_finding = finding_beside(playback, wound(), c.direction);
  return scrub(at_finding(playback, wound(), c.direction));
}

bool Workbench::Doer::operator()(const cmd::ToStart&) const {
  return scrub(at_length(stage().playback, wound(), 0.0));
}

bool Workbench::Doer::operator()(const cmd::ToEnd&) const {
  return scrub(at_length(stage().playback, wound(), Playback::at_end));
}

bool Workbench::Doer::operator()(const cmd::PickNode& c) const {
  stage() = with_picked_node(stage(), wound(), c.node);
  return true;
}

bool Workbench::Doer::operator()(const cmd::PickToward& c) const {
  const std::size_t node = *picked_node(stage(), wound());
  stage() = with_picked_node(stage(), wound(), neighbour(wound(), node, c.toward));
  return true;
}

bool Workbench::Doer::operator()(const cmd::ScrubToPicked&) const {
  return scrub(at_turn(stage().playback, wound(), *stage().picked_turn));
}

bool Workbench::Doer::operator()(const cmd::ChooseFinding& c) const {
  if (!c.finding) stage() = closed_again(stage());
  view().chosen_finding = c.finding;
  return true;
}

bool Workbench::Doer::operator()(const cmd::FlyToFinding& c) const {
  stage() = flown_to(stage(), wound(), c.finding, !bench.settings_.motion);
  return true;
}

bool Workbench::Doer::operator()(const cmd::FlyToNextFinding& c) const {
  const std::size_t count = wound().measurements().findings.size();
  const std::size_t step = c.direction > 0 ? 1 : count - 1;
  const std::size_t from = view().chosen_finding.value_or(c.direction > 0 ? count - 1 : 0);
  stage() = flown_to(stage(), wound(), (from + step) % count, !bench.settings_.motion);
  return true;
}

}  // namespace laywright
