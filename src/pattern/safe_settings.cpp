#include "pattern/safe_settings.h"

#include <cmath>
#include <initializer_list>
#include <optional>

namespace laywright {
namespace {

// Of a displacement that is wanted to be just so large.
constexpr double room_tolerance_d = 1e-6;

// A close pattern that is wanted: b double strokes beside a turns, the next one behind (+1) or ahead (-1).
struct Aim {
  int starts;
  long turns;
  double side;
};

class Search {
 public:
  Search(const Spool& spool, const Traverse& traverse, double d_mm, double diameter_mm, double gap_d)
      : spool_(spool), traverse_(traverse), d_mm_(d_mm), diameter_mm_(diameter_mm), gap_d_(gap_d) {}

  [[nodiscard]] double exact(SafeSetting::What what, const Aim& aim) const {
    return what == SafeSetting::What::pitch ? pitch_for(aim) : right_stop_for(aim);
  }

  // The setting on the grid, if it holds what it was solved for.
  [[nodiscard]] std::optional<SafeSetting> rounded(SafeSetting::What what, const Aim& aim) const {
    const double steps = exact(what, aim) / setting_step_mm;
    if (!std::isfinite(steps)) return std::nullopt;
    std::optional<SafeSetting> best;
    for (const double whole : {std::floor(steps), std::ceil(steps)}) {
      // Divided, not multiplied: so it is the double that is read from a plan with three decimals.
      const SafeSetting found = with(what, whole / std::round(1.0 / setting_step_mm));
      const Displacement& next = found.pattern.nearest;
      if (found.pattern.kind != PatternKind::close_pattern || next.starts != aim.starts || next.turns != aim.turns ||
          next.ahead_mm * aim.side > 0.0) {
        continue;
      }
      if (!best || misses(found) < misses(*best)) best = found;
    }
    return best;
  }

  [[nodiscard]] double own(SafeSetting::What what) const {
    return what == SafeSetting::What::pitch ? traverse_.pitch_mm : traverse_.right_stop_mm;
  }

 private:
  [[nodiscard]] double delta_mm(double pitch_mm) const {
    return (1.0 + gap_d_) * d_mm_ / std::cos(winding_angle_rad(pitch_mm, diameter_mm_));
  }

  [[nodiscard]] double pitch_for(const Aim& aim) const {
    const GuideCycle cycle = guide_cycle(spool_, traverse_);
    const double b = aim.starts;
    const double way = 2.0 * b * (cycle.stroke_mm + cycle.lost_motion_mm);
    const double running = static_cast<double>(aim.turns) - 2.0 * b * cycle.standing_turns;
    if (running <= 0.0) return NAN;
    // Delta changes with the pitch by far less than the pitch itself: a few rounds are enough.
    double pitch = traverse_.pitch_mm;
    for (int round = 0; round < 50; ++round) pitch = (way - aim.side * delta_mm(pitch)) / running;
    return pitch > 0.0 ? pitch : NAN;
  }

  [[nodiscard]] double right_stop_for(const Aim& aim) const {
    const GuideCycle cycle = guide_cycle(spool_, traverse_);
    const double off = aim.starts * winding_ratio(cycle) - static_cast<double>(aim.turns);
    const double longer = (aim.side * delta_mm(cycle.pitch_mm) - cycle.pitch_mm * off) / (2.0 * aim.starts);
    return cycle.stroke_mm + longer > 0.0 ? traverse_.right_stop_mm - longer : NAN;
  }

  [[nodiscard]] SafeSetting with(SafeSetting::What what, double value_mm) const {
    Traverse changed = traverse_;
    (what == SafeSetting::What::pitch ? changed.pitch_mm : changed.right_stop_mm) = value_mm;
    const GuideCycle cycle = guide_cycle(spool_, changed);
    if (!(cycle.pitch_mm > 0.0) || !(cycle.stroke_mm > 0.0)) return {what, value_mm, own(what), {}};
    return {what, value_mm, own(what), pattern_of(cycle, d_mm_, diameter_mm_, gap_d_)};
  }

  // Less is better; nearer than asked is worse than any that is farther.
  [[nodiscard]] double misses(const SafeSetting& setting) const {
    const double over = std::abs(setting.pattern.nearest.ahead_d) - (1.0 + gap_d_);
    return over >= -room_tolerance_d ? over : 1.0 - over;
  }

  Spool spool_;
  Traverse traverse_;
  double d_mm_, diameter_mm_, gap_d_;
};

}  // namespace

std::vector<SafeSetting> safe_settings(const Spool& spool, const Traverse& traverse, double d_mm, double diameter_mm,
                                       double gap_d) {
  const double ratio = winding_ratio(guide_cycle(spool, traverse));
  if (traverse.pitch_mm <= close_wind_d * d_mm) return {};
  const Search search(spool, traverse, d_mm, diameter_mm, gap_d);
  std::vector<SafeSetting> found;
  for (const SafeSetting::What what : {SafeSetting::What::pitch, SafeSetting::What::right_stop}) {
    std::optional<SafeSetting> below, above;
    const double own = search.own(what);
    for (int b = 1; b <= most_starts; ++b) {
      for (long a = std::lround(b * ratio) - 1; a <= std::lround(b * ratio) + 1; ++a) {
        for (const double side : {1.0, -1.0}) {
          const std::optional<SafeSetting> one = search.rounded(what, {b, a, side});
          if (!one) continue;
          if (one->value_mm < own && (!below || one->value_mm > below->value_mm)) below = one;
          if (one->value_mm > own && (!above || one->value_mm < above->value_mm)) above = one;
        }
      }
    }
    if (below) found.push_back(*below);
    if (above) found.push_back(*above);
  }
  return found;
}

}  // namespace laywright
