// A reel that is laid in milliseconds.
#pragma once

#include <string>

namespace laywright::testing {

// 1 mm fiber on a barrel of 100 mm: about 350 m fit, laid in milliseconds.
inline const std::string reel = R"(# Our reel.
format = "lay-plan 1"
title = "Reel"
[spool]
barrel_diameter = "100 mm"   # bare
flange_diameter = "190 mm"
inside_width = "20.5 mm"
mass = "0.5 kg"
[fiber]
diameter = "1 mm"
friction = 0.5
linear_mass = "1 kg/km"
[traverse]
pitch = "1.02 mm"
left_stop = "0.5 mm"
right_stop = "0.5 mm"
free_length = "100 mm"
[wind]
turns = 100                 # of the first one
line_speed = "60 m/min"
[limits]
rim_clearance = "5 mm"
)";

}  // namespace laywright::testing
