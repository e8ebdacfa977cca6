#include "answers/reading_text.h"

#include "base/quantity_text.h"
#include "base/units.h"

namespace laywright {

std::string reading_text(const Observation& observation, double value, bool inch) {
  constexpr double longest_in_mm = 10.0 * mm_per_m;
  if (observation.is_turns) return figure(value, 1);
  // What is off is told as what was read: by the unit of that.
  return observation.measured >= longest_in_mm ? amount_text(Amount::fiber_length, value / mm_per_m, 2, inch)
                                               : size_text(value, inch);
}

}  // namespace laywright
