// A sound plan that gives every key, for tests to spoil.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>

#include "plan/plan_file.h"

namespace laywright::sample {

inline constexpr std::string_view full = R"(# A plan for tests.
format = "lay-plan 1"
title = "Every key"
notes = "none"

[spool]
barrel_diameter = "150 mm"
flange_diameter = "236 mm"
inside_width = "95 mm"   # between the faces
flange_taper = "1 deg"
barrel_taper = "0.2 mm"
flange_runout = "0.1 mm"
mass = "0.9 kg"
look = "wood"

[fiber]
diameter = "0.245 mm"
diameter_tolerance = "0.005 mm"
friction = 0.5
section = "round"
linear_mass = "66 g/km"
modulus = "72 GPa"
shear_modulus = "31 GPa"
poisson = 0.17
diameter_scatter = "2 um"
scatter_length = "20 m"
core_diameter = "0.125 mm"
max_tension = "8.4 N"
min_bend_diameter = "60 mm"
look = "coated"
colour = "blue"

[traverse]
motion = "stepped"
pitch = "0.26 mm"
left_stop = "0.13 mm"
right_stop = "0.14 mm"
start = "left"
free_length = "200 mm"
step_angle = "45 deg"
guide_play = "0.01 mm"
pitch_scatter = "0.5 %"

[traverse.reversal]
kind = "dwell"
turns = 0.5
lost_motion = "0.02 mm"
stop_scatter = "0.03 mm"

[wind]
length = "3 km"
tension = "0.5 N"
line_speed = "60 m/min"

[[wind.step]]
from_layer = 10
pitch = "0.27 mm"
left_stop = "0.3 mm"
right_stop = "0.31 mm"

[[wind.step]]
from_layer = 20
pitch = "0.28 mm"

[takeup]
control = "taper"
taper = 0.3
torque_at_full_current = "0.6 N*m"
full_current = "0.5 A"
speed_ceiling = "300 rpm"
length_stop = "both"
reaction_time = "0.2 s"
start_ramp = "6 s"
stop_ramp = "4 s"

[limits]
gap = 0.6
pile_up = 1.5
rim_clearance = "3 mm"
valley = 1.25
unevenness = 0.75
open_gaps = "2.5 %"
flange_gap = 2.5
dropped_turns = 150
drop_depth = 3.5
ride_ups = 250
ribbon = 1.5
payoff_force = 1.75
pull = "20 %"
)";

// The text with one piece replaced; the piece must stand there exactly once.
inline std::string with(std::string_view old_piece, std::string_view new_piece, std::string_view text = full) {
  std::string result(text);
  const std::size_t at = result.find(old_piece);
  INFO("piece: " << old_piece);
  REQUIRE(at != std::string::npos);
  REQUIRE(result.find(old_piece, at + 1) == std::string::npos);
  return result.replace(at, old_piece.size(), new_piece);
}

// Line of the first place where this stands.
inline int line_of(std::string_view text, std::string_view piece) {
  const std::size_t at = text.find(piece);
  REQUIRE(at != std::string_view::npos);
  return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

inline PlanDraft draft_of(std::string_view text = full) {
  const Result<PlanDraft> read = read_plan(text, "a.lay.toml");
  for (const Issue& issue : read.issues()) UNSCOPED_INFO(to_text(issue));
  REQUIRE(read.ok());
  return read.value();
}

inline std::string all_text(const Issues& issues) {
  std::string text;
  for (const Issue& issue : issues) text += to_text(issue) + "\n";
  return text;
}

// The issues of a text that is read and checked.
inline Issues issues_in(std::string_view text) { return plan_from_text(text, "a.lay.toml").issues(); }

// The only issue of a text.
inline Issue only_issue(std::string_view text) {
  const Issues issues = issues_in(text);
  INFO(all_text(issues));
  REQUIRE(issues.size() == 1);
  return issues.front();
}

}  // namespace laywright::sample
