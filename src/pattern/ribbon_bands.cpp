#include "pattern/ribbon_bands.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace laywright {

std::vector<RibbonBand> ribbon_bands(const GuideCycle& cycle, double d_mm, double diameter_mm, double reach) {
  const double ratio = winding_ratio(cycle), cosine = std::cos(winding_angle_rad(cycle.pitch_mm, diameter_mm));
  std::vector<RibbonBand> bands;
  for (int b = 1; has_ribbons_of(b, cycle, d_mm); ++b) {
    const long last = static_cast<long>(std::floor(b * (ratio + reach)));
    for (long a = static_cast<long>(std::ceil(b * (ratio - reach))); a <= last; ++a) {
      if (a <= 0 || std::gcd(a, static_cast<long>(b)) != 1) continue;
      bands.push_back({b, a, static_cast<double>(a) / b, d_mm / (b * cycle.pitch_mm * cosine)});
    }
  }
  std::sort(bands.begin(), bands.end(), [](const RibbonBand& a, const RibbonBand& b) { return a.ratio < b.ratio; });
  return bands;
}

}  // namespace laywright
