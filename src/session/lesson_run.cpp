#include "session/lesson_run.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include <fmt/format.h>

#include "measure/acceptance.h"
#include "scene/camera.h"
#include "scene/finding_view.h"
#include "scene/marks.h"
#include "session/lesson_look.h"

namespace laywright {
namespace {

// From where a spool shows its width, its rims and a little of its outside.
constexpr double azimuth_deg = 14.0, elevation_deg = 16.0;

// Of the first layer, that is there before the first question is answered.
constexpr double beginning = 0.3;

// Fiber of the first layers of whichever build takes more for them.
double length_of_layers(const std::array<WoundPtr, 2>& wounds, double layers) {
  double longest = 0.0;
  for (const WoundPtr& wound : wounds) {
    double length = 0.0, left = layers;
    for (const LayerRow& row : wound->measurements().layers) {
      length += row.length_mm * std::clamp(left, 0.0, 1.0);
      left -= 1.0;
    }
    longest = std::max(longest, length);
  }
  return longest;
}

std::optional<std::size_t> gravest(const Wound& wound, const PointTo& point) {
  const auto& findings = wound.measurements().findings;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].kind == point.finding && (!point.side || findings[i].side == point.side)) return i;
  }
  return std::nullopt;
}

View whole_view(const View& before, const Plan& plan) {
  View view = with_nothing_away(before);
  view.until_turn.reset();
  view.chosen_finding.reset();
  view.findings = view.dimensions = view.flanges_see_through = false;
  view.guide = true;
  view.camera.azimuth_deg = azimuth_deg;
  view.camera.elevation_deg = elevation_deg;
  view.camera = fit_camera(plan, view);
  return view;
}

Sector quarter_toward(const Camera& camera) {
  const double toward = angle_of(-forward_of(camera));
  constexpr double eighth = 0.25 * std::numbers::pi;
  return {toward - eighth, toward + eighth};
}

// Where a play stops, fiber that is laid then, and the place that it has come to.
struct EndOfPlay {
  double length_mm = 0.0;
  std::optional<Vec3> place;
};
EndOfPlay end_of_play(const LessonRun& run, const Play& play) {
  if (!play.until) return {length_of_layers(run.as_given, play.to_layer), std::nullopt};
  const auto [wound, spot] = first_spot(run.as_given, *play.until);
  if (!spot) return {wound.build().length_mm, std::nullopt};
  return {length_at_turn(wound.source, laid_at(wound, *spot, play.until->kind)), spot->heart()};
}

Playback playback_of(const LessonRun& run, const std::optional<EndOfPlay>& end) {
  Playback playback;
  const LessonStep& step = run.now();
  if (outcome_hidden(run)) {
    playback.wanted_mm = length_of_layers(run.as_given, beginning);
  } else if (end) {
    playback.wanted_mm = 0.0;
    playback.playing = true;
    playback.stop_mm = end->length_mm;
    const Wound& own = *run.as_given[static_cast<std::size_t>(in_hand(step))];
    const double speed = *playback.stop_mm / step.play->seconds;
    playback.rate = std::clamp(speed / line_speed_of(own.plan()).mm_per_s, slowest_rate, fastest_rate);
  }
  return playback;
}

Shot pointing(Stage stage, const Wound& own, const LessonStep& step) {
  const PointTo& point = *step.point;
  if (point.layer) stage.view.last_layer = *point.layer;
  const std::optional<std::size_t> finding = point.finding ? gravest(own, point) : std::nullopt;
  if (!finding) return {std::move(stage), std::nullopt};
  const View before = stage.view;
  stage = flown_to(std::move(stage), own, *finding, true);
  stage.opened.reset();  // nothing to go back to: the next step shows what it will
  if (const auto spot = upright_spot(own, *finding); spot && step.cut) {
    const FindingKind kind = *point.finding;
    stage.view = close_view(before, own, *spot, kind);
    stage.view.chosen_finding = finding;
    stage.view.findings = false;
    // What is open is filled by what comes later.
    if (kind == FindingKind::gap || kind == FindingKind::flange_gap) {
      Playback then = stage.playback;
      then.wanted_mm = length_at_turn(own.source, laid_at(own, *spot, kind));
      stage = with_playback(std::move(stage), then, own);
    }
    return {std::move(stage), spot->heart()};
  }
  stage.view.findings = false;  // one ring says where; all marks at once would be too much
  // Near a flange it stands aside from the middle.
  const Mark mark = mark_of(own.source, stage.view, *finding);
  const Vec3 place = mark.spots.empty() ? mark.place : mark.spots.front().place;
  return {std::move(stage), place};
}

}  // namespace

bool outcome_hidden(const LessonRun& run) {
  const auto& steps = run.lesson->steps;
  const auto asks = std::find_if(steps.rbegin(), steps.rend(), [](const LessonStep& s) { return s.question; });
  if (asks == steps.rend()) return false;
  const auto last = static_cast<std::size_t>(steps.rend() - asks) - 1;
  return run.step <= last && !run.answers[last];
}

bool looks_from_near(const LessonRun& run) { return run.lesson->look && !run.now().whole && !outcome_hidden(run); }

Which in_hand(const LessonStep& step) {
  if (step.attempt) return step.attempt->in;
  if (step.play && step.play->until) return step.play->until->in;
  return step.point ? step.point->in : Which::second;
}

LaidPair laid_pair(const std::array<WoundPtr, 2>& wounds, bool draws_off) {
  LaidPair pair;
  Progress none;
  for (std::size_t k = 0; k < wounds.size(); ++k) {
    if (!wounds[k]) continue;
    pair[k] = {&wounds[k]->build(), &wounds[k]->measurements()};
    if (!draws_off) continue;
    // The source keeps them.
    pair[k].drawn_off = wounds[k]->source.payoff_forces(DrawOff::over_left, none).get();
    pair[k].most_pull = acceptance_of(wounds[k]->plan()).payoff_force;
  }
  return pair;
}

std::string caption_of(const LessonRun& run, Which which, const Document& document,
                       const std::vector<FieldRow>& rows) {
  const char* order = which == Which::first ? "First" : "Second";
  const LessonStep& step = run.now();
  if (step.attempt && step.attempt->in == which && !document.as_given()) {
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const FieldRow& each) { return each.path == step.attempt->key; });
    if (row != rows.end()) {
      const std::string_view unit = row->unit != nullptr ? std::string_view(row->unit->name) : std::string_view();
      return fmt::format("{}: {} {}{}{}", order, row->help.name, row->text, unit.empty() ? "" : " ", unit);
    }
  }
  return fmt::format("{}: {}", order, run.lesson->build(which).name);
}

Shot shot_of_step(const LessonRun& run, Stage before, bool jump) {
  const LessonStep& step = run.now();
  const Wound& own = *run.as_given[static_cast<std::size_t>(in_hand(step))];
  const Camera from = before.view.camera;
  Shot shot;
  Stage& stage = shot.stage;
  stage.view = whole_view(before.view, own.plan());
  stage.view.colouring =
      outcome_hidden(run) ? Colouring::layer : colouring_named(step.colours.value_or("")).value_or(Colouring::layer);
  const auto end = step.play ? std::optional(end_of_play(run, *step.play)) : std::nullopt;
  stage = with_playback(std::move(stage), playback_of(run, end), own);
  if (step.cut) stage.view.wedge = quarter_toward(stage.view.camera);
  if (looks_from_near(run) && !run.from_afar)
    stage.view = close_view(std::move(stage.view), run.as_given, *run.lesson->look);
  if (end) shot.place = end->place;
  if (step.point) shot = pointing(std::move(stage), own, step);
  if (!jump && !(from == stage.view.camera)) stage.flight = Flight{from, stage.view.camera, std::nullopt};
  if (stage.flight) stage.view.camera = from;
  return shot;
}

Shot shot_again(const LessonRun& run, Stage before, bool jump) {
  const Playback playback = before.playback;
  const Wound& own = *run.as_given[static_cast<std::size_t>(in_hand(run.now()))];
  Shot shot = shot_of_step(run, std::move(before), jump);
  shot.stage = with_playback(std::move(shot.stage), playback, own);
  return shot;
}

}  // namespace laywright
