#include "measure/strand_cursor.h"

#include <cmath>

namespace laywright {

StrandCursor::StrandCursor(const Build& build, std::size_t other_stroke, From from)
    : build_(build),
      stations_(build.stations_per_turn),
      first_(static_cast<Index>(build.strokes[other_stroke].first_node)),
      end_(static_cast<Index>(build.end_of(other_stroke))),
      direction_(build.strokes[other_stroke].direction),
      from_(from) {}

void CrossingCounter::add(double position) {
  constexpr double clear_by = 0.1;
  if (!begun_) {
    begun_ = true;
    cell_ = std::floor(position);
    return;
  }
  if (position >= cell_ + 1.0 + clear_by) {
    const double now = std::floor(position - clear_by);
    count_ += static_cast<int>(now - cell_);
    cell_ = now;
  } else if (position < cell_ - clear_by) {
    const double now = std::floor(position + clear_by);
    count_ += static_cast<int>(cell_ - now);
    cell_ = now;
  }
}

}  // namespace laywright
