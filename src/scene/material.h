// What spool and fiber are made of, for the eye: their colours, and how light plays on them.
#pragma once

#include <string>

#include "plan/lay_plan.h"
#include "scene/coordinates.h"
#include "scene/view.h"

namespace laywright {

// Shares, 0 to 1. Metal reflects in its own colour, and hardly scatters; what is clear takes light in and gives it back
// at its edges. Estimates, for the eye.
struct Sheen {
  float metal = 0.0F, clear = 0.0F;

  [[nodiscard]] bool operator==(const Sheen&) const = default;
};

struct Material {
  std::string name;  // in words
  Rgba colour;
  Sheen sheen;
};

// By its look (measure/fiber_look.h).
[[nodiscard]] Material fiber_material(const Plan& plan);

[[nodiscard]] Material spool_material(const Plan& plan, Theme theme);

}  // namespace laywright
