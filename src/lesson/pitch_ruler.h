// The fiber's width held against the pitch, over one layer: what the guide gives to its turns, and what they need.
#pragma once

#include <string>

#include "plan/lay_plan.h"

namespace laywright {

struct PitchRuler {
  double fiber_mm = 0.0, pitch_mm = 0.0;
  double travel_mm = 0.0;  // of the guide from stop to stop
  int turns = 0;           // whole ones, on that way
  double need_mm = 0.0;    // side by side

  // Left over for them; negative: too little.
  [[nodiscard]] double spare_mm() const { return turns * pitch_mm - need_mm; }
};

// As the first layer is set.
[[nodiscard]] PitchRuler ruler_of(const Plan& plan);

// "In one layer 370 turns need 90.7 mm, the guide gives them 94.7 mm: 4.1 mm to spare."
[[nodiscard]] std::string ruler_words(const PitchRuler& ruler, bool inch = false);

}  // namespace laywright
