// Figures as words, in the units that a person chose.
#pragma once

#include <string>

#include "scene/view.h"

namespace laywright {

// "203.42 mm", "8.009 in".
[[nodiscard]] std::string size_text(double mm, Units units);
// Of fiber: "1.24 km", "830 m", "2720 ft".
[[nodiscard]] std::string fiber_length_text(double mm, Units units);
// "41 s", "3 min 05 s", "1 h 02 min".
[[nodiscard]] std::string play_time_text(double seconds);
// "flange_gap" as a person reads it: "Flange gap".
[[nodiscard]] std::string spoken(std::string name);

}  // namespace laywright
