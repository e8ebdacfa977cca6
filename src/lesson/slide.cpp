#include "lesson/slide.h"

#include <algorithm>
#include <cmath>

#include "base/round_figure.h"

namespace laywright {

Slide slide_between(double given, double good, double range_low, double range_high) {
  constexpr double short_of = 0.6, beyond = 2.0, steps = 4.0;
  if (!std::isfinite(given)) given = 2.0 * good;
  const double reach = std::max(std::abs(given - good), 1e-6);
  const bool up = good > given;
  Slide slide{std::min(given, good) - (up ? short_of : beyond) * reach,
              std::max(given, good) + (up ? beyond : short_of) * reach, round_figure_below(reach / steps)};
  slide.low = std::max(slide.low, range_low);
  slide.high = std::min(slide.high, range_high);
  slide.low = slide.step * std::ceil(slide.low / slide.step);
  slide.high = slide.step * std::floor(slide.high / slide.step);
  return slide;
}

double stepped(const Slide& slide, double value, double way) {
  if (!std::isfinite(value)) return slide.high;
  return on_step(slide, value + way * slide.step);
}

double on_step(const Slide& slide, double value) {
  return without_noise(slide.step * std::round(value / slide.step));
}

}  // namespace laywright
