#include "pattern/pattern.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace laywright {
namespace {

// Of a displacement in d that is meant to be exactly one.
constexpr double rounding_d = 1e-9;
constexpr double returned_within_d = 0.5;

double d_per_mm(const GuideCycle& cycle, double d_mm, double diameter_mm) {
  return std::cos(winding_angle_rad(cycle.pitch_mm, diameter_mm)) / d_mm;
}

int returns_after(double ratio, double pitch_d) {
  // Among m multiples of any number one lies within 1 / m of a whole one (Dirichlet).
  const int most = static_cast<int>(std::ceil(pitch_d / returned_within_d)) + 1;
  for (int m = 1; m < most; ++m) {
    const double turns = m * ratio;
    if (std::abs(turns - std::round(turns)) * pitch_d <= returned_within_d) return m;
  }
  return most;
}

}  // namespace

double winding_angle_rad(double pitch_mm, double diameter_mm) {
  return std::atan(pitch_mm / (std::numbers::pi * diameter_mm));
}

bool has_ribbons_of(int starts, const GuideCycle& cycle, double d_mm) {
  return starts <= most_starts && cycle.pitch_mm > starts * close_wind_d * d_mm;
}

std::vector<Displacement> displacements(const GuideCycle& cycle, double d_mm, double diameter_mm) {
  const double ratio = winding_ratio(cycle), per_mm = d_per_mm(cycle, d_mm, diameter_mm);
  std::vector<Displacement> found;
  for (int b = 1; has_ribbons_of(b, cycle, d_mm); ++b) {
    const long a = std::lround(b * ratio);
    if (std::gcd(a, static_cast<long>(b)) != 1) continue;  // the same as of fewer starts, and farther off
    const double ahead = cycle.pitch_mm * (static_cast<double>(a) - b * ratio);
    found.push_back({b, a, ahead, ahead * per_mm});
  }
  return found;
}

const char* name_of(PatternKind kind) {
  switch (kind) {
    case PatternKind::close_wind: return "close wind";
    case PatternKind::ribbon: return "ribbon";
    case PatternKind::close_pattern: return "close pattern";
    case PatternKind::open: return "open";
  }
  return "";
}

Pattern pattern_of(const GuideCycle& cycle, double d_mm, double diameter_mm, double gap_d) {
  Pattern pattern;
  pattern.ratio = winding_ratio(cycle);
  const std::vector<Displacement> all = displacements(cycle, d_mm, diameter_mm);
  if (all.empty()) {
    pattern.kind = PatternKind::close_wind;
    return pattern;
  }
  pattern.returns_after = returns_after(pattern.ratio, cycle.pitch_mm * d_per_mm(cycle, d_mm, diameter_mm));
  const auto is_ribbon = [](const Displacement& one) { return std::abs(one.ahead_d) < 1.0 - rounding_d; };
  const auto ribbon = std::find_if(all.begin(), all.end(), is_ribbon);
  if (ribbon != all.end()) {
    pattern.kind = PatternKind::ribbon;
    pattern.nearest = *ribbon;
    return pattern;
  }
  pattern.nearest = *std::min_element(all.begin(), all.end(), [](const Displacement& a, const Displacement& b) {
    return std::abs(a.ahead_d) < std::abs(b.ahead_d);
  });
  const bool close = std::abs(pattern.nearest.ahead_d) <= 1.0 + 2.0 * gap_d + rounding_d;
  pattern.kind = close ? PatternKind::close_pattern : PatternKind::open;
  return pattern;
}

}  // namespace laywright
