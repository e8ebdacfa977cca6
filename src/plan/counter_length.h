// What a machine's length counter shows, as fiber.
#pragma once

#include "plan/dial.h"

namespace laywright {

// How much fiber is wound, mm, where the counter shows this: by its wheel, less its error. counter_reading() the other way round.
[[nodiscard]] inline double length_at_reading(const Counter& counter, double reading) {
  return reading * (counter.wheel_mm / counter.counts_per_turn / (1.0 + counter.error));
}

}  // namespace laywright
