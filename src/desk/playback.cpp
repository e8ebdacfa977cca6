#include "desk/playback.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace laywright {
namespace {

// Findings begin where their first fiber lies; closer than this the scrubber counts as being there, in turns.
constexpr double same_place = 1e-6;

// Between the two nodes around a place.
void find_lay_point(const Build& build, double turn, Moment& moment) {
  if (build.nodes.size() == 0) return;
  const double node = std::max(0.0, turn * build.stations_per_turn);
  const std::size_t last = build.nodes.size() - 1;
  const std::size_t before = std::min(last, static_cast<std::size_t>(node));
  const std::size_t after = std::min(last, before + 1);
  const double share = std::clamp(node - static_cast<double>(before), 0.0, 1.0);
  moment.lay_x_mm = std::lerp(build.nodes.x(before), build.nodes.x(after), share);
  moment.lay_r_mm = std::lerp(build.nodes.r(before), build.nodes.r(after), share);
  moment.layer = static_cast<int>(build.stroke_of(before)) + 1;
}

}  // namespace

LineSpeed line_speed_of(const Plan& plan) {
  const auto& speed = plan.wind().line_speed_mm_per_s;
  return speed ? LineSpeed{*speed, false} : LineSpeed{};
}

Moment moment_of(const Playback& playback, const Wound& wound) {
  const Build& build = wound.build();
  Moment moment;
  moment.at_end = playback.wanted_mm >= build.length_mm;
  moment.length_mm = std::clamp(playback.wanted_mm, 0.0, build.length_mm);
  moment.turn = moment.at_end ? build.turns : turn_at_length(wound.source, moment.length_mm);
  moment.time_s = moment.length_mm / line_speed_of(wound.plan()).mm_per_s;
  moment.angle_rad = full_turn * (moment.turn - std::floor(moment.turn));
  find_lay_point(build, moment.turn, moment);
  moment.guide_x_mm = wound.source.guide().x_at(moment.turn);
  return moment;
}

double shown_turn(const Playback& playback, const Wound& wound, const Moment& moment) {
  if (!playback.playing || moment.lay_r_mm <= 0.0) return moment.turn;
  const double speed = line_speed_of(wound.plan()).mm_per_s * rate_of(playback, wound);
  if (speed / (full_turn * moment.lay_r_mm) < fast_turns_per_s) return moment.turn;
  return std::max(0.0, std::floor(moment.turn - fast_angle_share) + fast_angle_share);
}

Playback at_length(Playback playback, const Wound& wound, double length_mm) {
  if (std::isnan(length_mm)) return playback;
  playback.wanted_mm = length_mm >= wound.build().length_mm ? Playback::at_end : std::max(0.0, length_mm);
  return playback;
}

Playback at_turn(Playback playback, const Wound& wound, double turn) {
  if (std::isnan(turn)) return playback;
  if (turn >= wound.build().turns) return at_length(playback, wound, Playback::at_end);
  return at_length(playback, wound, length_at_turn(wound.source, std::max(0.0, turn)));
}

Playback at_time(Playback playback, const Wound& wound, double time_s) {
  return at_length(playback, wound, time_s * line_speed_of(wound.plan()).mm_per_s);
}

std::optional<std::size_t> finding_beside(const Playback& playback, const Wound& wound, int direction) {
  const double here = moment_of(playback, wound).turn;
  const auto& findings = wound.measurements().findings;
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const double ahead = direction * (findings[i].turn - here);
    if (ahead > same_place && (!best || ahead < direction * (findings[*best].turn - here))) best = i;
  }
  return best;
}

Playback at_finding(Playback playback, const Wound& wound, int direction) {
  const std::optional<std::size_t> finding = finding_beside(playback, wound, direction);
  return finding ? at_turn(playback, wound, wound.measurements().findings[*finding].turn) : playback;
}

double rate_of(const Playback& playback, const Wound& wound) {
  if (playback.rate) return *playback.rate;
  const double seconds = wound.build().length_mm / line_speed_of(wound.plan()).mm_per_s;
  return std::clamp(seconds / whole_wind_s, slowest_rate, fastest_rate);
}

Playback with_rate(Playback playback, double rate) {
  if (std::isnan(rate)) return playback;
  playback.rate = std::clamp(rate, slowest_rate, fastest_rate);
  return playback;
}

Playback started(Playback playback) {
  if (playback.wanted_mm == Playback::at_end) playback.wanted_mm = 0.0;
  playback.playing = true;
  return playback;
}

Playback played(Playback playback, const Wound& wound, double seconds) {
  if (!playback.playing) return playback;
  const double from = std::min(playback.wanted_mm, wound.build().length_mm);
  const double speed = line_speed_of(wound.plan()).mm_per_s * rate_of(playback, wound);
  double to = from + speed * std::max(0.0, seconds);
  if (playback.stop_mm && from < *playback.stop_mm && to >= *playback.stop_mm) {
    to = *playback.stop_mm;
    playback.playing = false;
  }
  playback = at_length(playback, wound, to);
  if (playback.wanted_mm == Playback::at_end) playback.playing = false;
  return playback;
}

}  // namespace laywright
