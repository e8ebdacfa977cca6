#include "verdict/ribbon_free.h"

#include <algorithm>
#include <cmath>

namespace laywright {
namespace {

constexpr double apart_d = 2.5;
constexpr int most_double_strokes = 4;

// How near a double stroke comes to one of the four before it, mm.
double nearest_mm(double pitch_mm, double turns) {
  double nearest = pitch_mm;
  for (int m = 1; m <= most_double_strokes; ++m) {
    nearest = std::min(nearest, std::abs(m * turns - std::round(m * turns)) * pitch_mm);
  }
  return nearest;
}

}  // namespace

RibbonFree ribbon_free_pitch(double pitch_mm, double double_stroke_mm, double dwell_turns, double diameter_mm) {
  const double turns_now = double_stroke_mm / pitch_mm + dwell_turns;
  RibbonFree best{pitch_mm, 4, turns_now, turns_now};
  double best_mm = nearest_mm(pitch_mm, turns_now);
  constexpr int steps = 400;
  for (int i = 1; i <= steps && best_mm < apart_d * diameter_mm; ++i) {
    const double turns = turns_now + static_cast<double>(i) / steps;
    const double pitch = double_stroke_mm / (turns - dwell_turns);
    const double apart = nearest_mm(pitch, turns);
    if (apart > best_mm) {
      best_mm = apart;
      best = {pitch, 4, turns, turns_now};
    }
  }
  if (best.pitch_mm == pitch_mm) return best;
  // As it is told and set, and with the turns that this makes.
  const double scale =
      std::pow(10.0, static_cast<double>(best.digits) - 1.0 - std::floor(std::log10(best.pitch_mm)));
  best.pitch_mm = std::round(best.pitch_mm * scale) / scale;
  best.turns = double_stroke_mm / best.pitch_mm + dwell_turns;
  return best;
}

}  // namespace laywright
